import type { Intent } from '../slots.ts';
import { byShape } from './by-shape.ts';
import { type IntentReader, scoreOf } from './intent-reader.ts';
import { INTENT_READERS } from './intents/index.ts';
import type { Lexed } from './lexed.ts';

/** Below this nothing was understood. */
const FLOOR = 1.5;

const byCue = new Map<string, IntentReader[]>();
for (const reader of INTENT_READERS) {
  for (const cue of reader.cues) byCue.set(cue, [...(byCue.get(cue) ?? []), reader]);
}

/** The intent whose grammar fits best, if any does. */
export const choose = byShape((lexed: Lexed): { reader: IntentReader; score: number } | undefined => {
  const candidates = new Set<IntentReader>();
  for (const sym of lexed.syms) for (const reader of byCue.get(sym) ?? []) candidates.add(reader);
  let best: { reader: IntentReader; score: number } | undefined;
  for (const reader of candidates) {
    const score = scoreOf(reader, lexed);
    if (score >= FLOOR && (!best || score > best.score)) best = { reader, score };
  }
  return best;
});

export const readerOf = (intent: Intent): IntentReader | undefined =>
  INTENT_READERS.find((reader) => reader.intent === intent);
