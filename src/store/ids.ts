import { randomBytes } from 'node:crypto';

/** An id that sorts by when it was made: milliseconds in base 36, then 8 random bytes. */
export function newId(nowMs: number): string {
  return `${nowMs.toString(36).padStart(9, '0')}-${randomBytes(8).toString('hex')}`;
}
