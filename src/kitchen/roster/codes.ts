/** A code has a digit, which names do not: nobody is to be written down by name. */
export const isPersonCode = (text: string): boolean =>
  /^(?=[A-Z0-9_-]*\d)[A-Z0-9][A-Z0-9_-]{0,31}$/.test(text);

/** More pieces than anybody is handed: beyond it there is a typing error. */
const MOST_PIECES = 20;

/** What is wrong with a number of pieces for one person; undefined when nothing is. */
export function pieceProblem(pieces: number): string | undefined {
  if (Number.isFinite(pieces) && pieces > 0 && pieces <= MOST_PIECES) return undefined;
  return `a person gets more than 0 and at most ${MOST_PIECES}.`;
}
