import { harmless } from '../chat/wrap.ts';
import type { BookProblem } from '../nutrition/book.ts';

/** More than this on a screen helps nobody mend anything. */
const MOST_SHOWN = 30;

/**
 * What is wrong in the kitchen's folder, one line each, as an editor's "go to line" wants it.
 * @example bookProblemLines(problems)[0] // 'recipes/cards/oat-bars.yaml line 12, field yield: The yield is missing. Write yield: 12 bars'
 */
export function bookProblemLines(problems: readonly BookProblem[]): string[] {
  const lines = problems.slice(0, MOST_SHOWN).map(({ file, line, field, message, hint }) => {
    const where = [`${file}${line === undefined ? '' : ` line ${line}`}`, field && `field ${field}`];
    return harmless(`${where.filter(Boolean).join(', ')}: ${message} ${hint}`).replaceAll('\n', ' ');
  });
  const rest = problems.length - lines.length;
  return rest > 0 ? [...lines, `and ${rest} more; mend these first.`] : lines;
}
