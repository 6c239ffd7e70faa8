import { randomBytes } from 'node:crypto';

const MS_DIGITS = 9;
const COUNT_DIGITS = 4;

/** An id that sorts by when it was made: milliseconds in base 36, a count within them, then 6 random bytes. */
export function newId(nowMs: number, count = 0): string {
  const at = nowMs.toString(36).padStart(MS_DIGITS, '0');
  return `${at}-${count.toString(36).padStart(COUNT_DIGITS, '0')}${randomBytes(6).toString('hex')}`;
}

/**
 * Makes ids that sort after `last` and after one another, whatever the clock does: it may stand still or go back,
 * yet "the last entry" stays the last.
 */
export function idsAfter(last: string | undefined, nowMs: () => number): () => string {
  let atMs = last === undefined ? 0 : Number.parseInt(last.slice(0, MS_DIGITS), 36);
  let count =
    last === undefined ? 0 : Number.parseInt(last.slice(MS_DIGITS + 1, MS_DIGITS + 1 + COUNT_DIGITS), 36);
  return () => {
    const now = nowMs();
    if (now > atMs) {
      atMs = now;
      count = 0;
    } else if (++count >= 36 ** COUNT_DIGITS) {
      atMs += 1;
      count = 0;
    }
    return newId(atMs, count);
  };
}
