import type { z } from 'zod';
import type { BookProblem } from '../nutrition/book.ts';

/** Where a checked value stands in its file, so that a failed check can point at it. */
export interface Whereabouts {
  readonly file: string;
  /** Line of the field at `path`, counted from 1; `undefined` when the file has no such place. */
  readonly lineOf: (path: readonly PropertyKey[]) => number | undefined;
  /** What to write in the field at `path` instead. */
  readonly hintOf: (path: readonly PropertyKey[]) => string;
}

/** `['portions', 0, 'mass_g']` as people read it: `portions[1].mass_g`, counted from one. */
export function fieldName(path: readonly PropertyKey[]): string {
  return path.reduce<string>((name, step) => {
    if (typeof step === 'number') return `${name}[${step + 1}]`;
    return name === '' ? String(step) : `${name}.${String(step)}`;
  }, '');
}

/**
 * A failed zod check as problems a writer of the folder can mend.
 *
 * @example
 * problemsOf(result.error, { file: 'foods.csv', lineOf: () => 7, hintOf: () => 'Write grams, such as 3.5.' })
 * // [{ file: 'foods.csv', line: 7, field: 'protein_g', message: 'protein_g: …', hint: 'Write grams, such as 3.5.' }]
 */
export function problemsOf(error: z.ZodError, where: Whereabouts): BookProblem[] {
  return error.issues.map((issue) => {
    const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path;
    const line = where.lineOf(path);
    const field = fieldName(path);
    return {
      file: where.file,
      ...(line === undefined ? {} : { line }),
      ...(field === '' ? {} : { field }),
      message: field === '' ? issue.message : `${field}: ${issue.message}`,
      hint: where.hintOf(path),
    };
  });
}
