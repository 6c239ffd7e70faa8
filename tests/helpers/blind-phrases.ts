import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { read } from '../../src/chat/reading/read.ts';
import { INTENTS, type Reading, type SlotValue } from '../../src/chat/slots.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { isSame } from './phrases.ts';

/** A request and what it should be read as, written by someone who had not seen the reader. */
interface BlindPhrase {
  readonly say: string;
  /** The request answered just before in the same conversation. */
  readonly after?: string;
  /** A list where the contract leaves two intents open. */
  readonly intent: string | readonly string[];
  readonly slots: { readonly [name: string]: SlotValue };
}

export interface ScoredPhrase {
  readonly say: string;
  readonly intents: readonly string[];
  readonly reading: Reading;
  readonly isIntentRight: boolean;
  /** Slots expected, and the names of those that are missing or have another value. */
  readonly slots: { readonly [name: string]: SlotValue };
  readonly wrongSlots: readonly string[];
}

const chat = new URL('../chat/', import.meta.url);

/** Reads every blind phrase of one folder of tests/chat at one instant and compares; slots nobody expected are welcome. */
export function scoreBlindPhrases(book: Book, nowMs: number, folder: string): ScoredPhrase[] {
  return loadBlindPhrases(new URL(`${folder}/`, chat)).map((phrase) => {
    const intents = typeof phrase.intent === 'string' ? [phrase.intent] : phrase.intent;
    const last =
      phrase.after === undefined ? undefined : read(phrase.after, { book, conversation: {}, nowMs });
    const reading = read(phrase.say, { book, conversation: last ? { last } : {}, nowMs });
    const wrongSlots = Object.entries(phrase.slots)
      .filter(([name, value]) => !isAsSaid(value, reading.slots[name], book))
      .map(([name]) => name);
    const { say, slots } = phrase;
    return { say, intents, reading, isIntentRight: intents.includes(reading.intent), slots, wrongSlots };
  });
}

function loadBlindPhrases(folder: URL): BlindPhrase[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .flatMap((file) => parse(readFileSync(new URL(file, folder), 'utf8')) as BlindPhrase[]);
}

/** Pounds of body weight may be rounded on the way to kilograms, so a number may be 1 in 500 off. */
function isAsSaid(said: SlotValue, got: SlotValue | undefined, book: Book): boolean {
  if (typeof said === 'number' && typeof got === 'number') {
    return Math.abs(said - got) <= Math.abs(said) / 500;
  }
  return isSame(said, got, book);
}

/** Phrases, how many intents were right, slots expected, how many of them hold the value expected. */
export function tally(phrases: readonly ScoredPhrase[]) {
  const slots = phrases.reduce((total, phrase) => total + Object.keys(phrase.slots).length, 0);
  const wrong = phrases.reduce((total, phrase) => total + phrase.wrongSlots.length, 0);
  const right = phrases.filter((phrase) => phrase.isIntentRight).length;
  return { phrases: phrases.length, right, slots, filled: slots - wrong };
}

const scoreLine = (name: string, { phrases, right, slots, filled }: ReturnType<typeof tally>) =>
  `${name.padEnd(12)} intents ${right}/${phrases} slots ${filled}/${slots}`;

function describeMiss({ say, intents, reading, slots, wrongSlots }: ScoredPhrase): string {
  const wrong = wrongSlots.map(
    (name) => `${name} ${JSON.stringify(reading.slots[name])}, not ${JSON.stringify(slots[name])}`,
  );
  return `${say} -> ${reading.intent}, asked as ${intents.join(' or ')}; ${wrong.join('; ')}`;
}

/** Scores by the first intent of each phrase, then overall, then every miss, one a line. */
export function reportOn(scored: readonly ScoredPhrase[]): string {
  const misses = scored.filter((phrase) => !phrase.isIntentRight || phrase.wrongSlots.length > 0);
  return [
    ...INTENTS.map((intent) =>
      scoreLine(intent, tally(scored.filter((phrase) => phrase.intents[0] === intent))),
    ),
    scoreLine('all', tally(scored)),
    ...misses.map(describeMiss),
  ].join('\n');
}
