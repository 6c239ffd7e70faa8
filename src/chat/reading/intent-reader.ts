import type { Intent, Slots } from '../slots.ts';
import type { Lexed } from './lexed.ts';

/** A pattern over a message's shape, and how strongly it speaks for the intent, 1 to 10. */
export type Rule = readonly [pattern: RegExp, weight: number];

/** One intent's grammar: when it is meant, and what was said for it. */
export interface IntentReader {
  readonly intent: Intent;
  /** Words and symbols of which one must be there before the rules are tried. */
  readonly cues: readonly string[];
  readonly rules: readonly Rule[];
  /** A shape it is never meant by, whatever its rules find: a question is no entry. */
  readonly never?: RegExp;
  slots(lexed: Lexed): Slots;
}

/** The strongest rule that fits; several that fit break ties. */
export function scoreOf(reader: IntentReader, lexed: Lexed): number {
  if (reader.never?.test(lexed.shape)) return 0;
  let best = 0;
  let fitting = 0;
  for (const [pattern, weight] of reader.rules) {
    if (!pattern.test(lexed.shape)) continue;
    fitting++;
    if (weight > best) best = weight;
  }
  return best + fitting * 0.05;
}
