import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';

/**
 * The atoms a pattern over the shape covers. The pattern begins and ends with a space.
 * @example find(lexed, / into N /)?.at(-1)?.value
 */
export function find(lexed: Lexed, pattern: RegExp): readonly Atom[] | undefined {
  const match = pattern.exec(lexed.shape);
  if (!match) return undefined;
  const from = count(lexed.shape, match.index);
  const inner = match[0].trim();
  return lexed.seen.slice(from, from + count(inner, inner.length) + 1);
}

function count(shape: string, end: number): number {
  let spaces = 0;
  for (let i = 0; i < end; i++) if (shape.charCodeAt(i) === 32) spaces++;
  return spaces;
}

export const all = (lexed: Lexed, sym: string): Atom[] => lexed.seen.filter((atom) => atom.sym === sym);

export const first = (lexed: Lexed, sym: string): Atom | undefined =>
  lexed.syms.has(sym) ? lexed.seen.find((atom) => atom.sym === sym) : undefined;

/** The last atom with this symbol in what a pattern covers. */
export const lastIn = (lexed: Lexed, pattern: RegExp, sym: string): Atom | undefined =>
  find(lexed, pattern)?.findLast((atom) => atom.sym === sym);
