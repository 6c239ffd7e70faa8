import type { z } from 'zod';
import type { BookProblem } from '../nutrition/book.ts';
import { type FieldPath, fieldName, toBookProblem } from './place.ts';

/** Where a checked value stands in its file, so that a failed check can point at it. */
export interface Whereabouts {
  readonly file: string;
  /** Line of the field at `path`, counted from 1; `undefined` when the file has no such place. */
  readonly lineOf: (path: FieldPath) => number | undefined;
  /** What to write in the field at `path` instead. */
  readonly hintOf: (path: FieldPath) => string;
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
    const stray = issue.code === 'unrecognized_keys' ? issue.keys.slice(0, 1) : [];
    const path = [...issue.path, ...stray].filter((step) => typeof step !== 'symbol');
    const name = fieldName(path);
    const message = name === undefined ? issue.message : `${name}: ${issue.message}`;
    return toBookProblem(where.file, where.lineOf(path), { path, message, hint: where.hintOf(path) });
  });
}
