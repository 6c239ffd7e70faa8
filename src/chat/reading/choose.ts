import { INTENTS, type Intent } from '../slots.ts';
import { byShape } from './by-shape.ts';
import { likelihood, weigh } from './evidence/weigh.ts';
import { type IntentReader, scoreOf } from './intent-reader.ts';
import { INTENT_READERS } from './intents/index.ts';
import type { Lexed } from './lexed.ts';
import { secondLook } from './second-look.ts';

/** Below this a rule says nothing. */
const FLOOR = 1.5;
/** What a point of a rule's strength counts beside the weights of words, and how much more where the words are strange. */
const RULE_WEIGHT = 0.8;
const RULE_WEIGHT_AMONG_STRANGERS = 1;
/** What naming the things of an intent counts, as a rule would, where no rule found anything. */
const SECOND_LOOK = 4;
/** Words alone, without any rule, must make an intent this likely. */
const LIKELY = 0.5;

/** Entries of the ledger and reminders are never read from words alone: a rule must have seen the sentence. */
const NEEDS_RULE: ReadonlySet<Intent> = new Set([
  'made',
  'served',
  'tossed',
  'counted',
  'temperature',
  'remind',
  'settings',
]);

const UNKNOWN = INTENTS.indexOf('unknown');

const byCue = new Map<string, IntentReader[]>();
for (const reader of INTENT_READERS) {
  for (const cue of reader.cues) byCue.set(cue, [...(byCue.get(cue) ?? []), reader]);
}

const readers: ReadonlyMap<Intent, IntentReader> = new Map(
  INTENT_READERS.map((reader) => [reader.intent, reader]),
);

export const readerOf = (intent: Intent): IntentReader | undefined => readers.get(intent);

/** An intent and how strong the rule is that speaks for it; 0 where words alone do. */
export interface Chosen {
  readonly reader: IntentReader;
  readonly score: number;
}

/**
 * The intent that fits best, if any does: the strongest rule of each grammar and the weights of all words together,
 * since the words around a request tell as much of it as its pattern.
 */
export const choose = byShape((lexed: Lexed): Chosen | undefined => {
  const scores = ruleScores(lexed);
  const evidence = weigh(lexed.shape);
  const { sums, strange } = evidence;
  const ruleWeight = RULE_WEIGHT + RULE_WEIGHT_AMONG_STRANGERS * strange;
  let best: Chosen | undefined;
  let most = (sums[UNKNOWN] as number) + ruleWeight * FLOOR;
  INTENTS.forEach((intent, i) => {
    const reader = readers.get(intent);
    const score = scores.get(intent) ?? 0;
    if (!reader || (score === 0 && (NEEDS_RULE.has(intent) || likelihood(evidence, i) < LIKELY))) return;
    const sum = (sums[i] as number) + ruleWeight * score;
    if (sum <= most) return;
    most = sum;
    best = { reader, score };
  });
  return best;
});

function ruleScores(lexed: Lexed): Map<Intent, number> {
  const candidates = new Set<IntentReader>();
  for (const sym of lexed.syms) for (const reader of byCue.get(sym) ?? []) candidates.add(reader);
  const scores = new Map<Intent, number>();
  for (const reader of candidates) {
    const score = scoreOf(reader, lexed);
    if (score >= FLOOR) scores.set(reader.intent, score);
  }
  const seen = scores.size === 0 ? secondLook(lexed) : undefined;
  if (seen !== undefined) scores.set(seen, SECOND_LOOK);
  return scores;
}
