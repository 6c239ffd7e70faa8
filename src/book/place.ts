import type { BookProblem } from '../nutrition/book.ts';

/** Where in a value something stands: keys and list places from the top. */
export type FieldPath = readonly (string | number)[];

/** Something wrong in one file, before the file and line are known. */
export interface Complaint {
  readonly path: FieldPath;
  readonly message: string;
  readonly hint: string;
}

/** `['ingredients', 2, 'food']` as people read it: `ingredients[3].food`, counting from one. */
export function fieldName(path: FieldPath): string | undefined {
  if (path.length === 0) return undefined;
  return path.reduce<string>(
    (name, part) =>
      typeof part === 'number' ? `${name}[${part + 1}]` : name === '' ? part : `${name}.${part}`,
    '',
  );
}

/** A complaint with its file and line. */
export function toBookProblem(file: string, line: number | undefined, complaint: Complaint): BookProblem {
  const field = fieldName(complaint.path);
  return {
    file,
    ...(line === undefined ? {} : { line }),
    ...(field === undefined ? {} : { field }),
    message: complaint.message,
    hint: complaint.hint,
  };
}
