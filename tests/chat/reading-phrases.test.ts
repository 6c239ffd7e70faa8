import { describe, expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import { read } from '../../src/chat/reading/read.ts';
import { isSame, loadPhrases, type Phrase } from '../helpers/phrases.ts';

const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
const nowMs = Date.parse('2026-11-25T10:00:00-06:00');
const phrases = loadPhrases();

const readPhrase = (phrase: Phrase) => read(phrase.text, { book, conversation: {}, nowMs });
const URGENT = new Set(['emergency', 'medical']);

interface Tally {
  intents: number;
  right: number;
  slots: number;
  filled: number;
}

function scored(): { tallies: Map<string, Tally>; misses: string[] } {
  const tallies = new Map<string, Tally>();
  const misses: string[] = [];
  for (const phrase of phrases) {
    const reading = readPhrase(phrase);
    const key = phrase.intents[0] ?? '';
    const tally = tallies.get(key) ?? { intents: 0, right: 0, slots: 0, filled: 0 };
    tallies.set(key, tally);
    const isRight = phrase.intents.includes(reading.intent);
    tally.intents++;
    if (isRight) tally.right++;
    else misses.push(`${phrase.text} -> ${reading.intent}, not ${phrase.intents.join(' or ')}`);
    for (const [name, value] of Object.entries(phrase.slots)) {
      tally.slots++;
      if (isSame(value, reading.slots[name], book)) tally.filled++;
      else
        misses.push(
          `${phrase.text} -> ${reading.intent} ${name}: ${JSON.stringify(reading.slots[name])}, not ${JSON.stringify(value)}`,
        );
    }
  }
  return { tallies, misses };
}

describe('reading our own phrases', () => {
  const { tallies, misses } = scored();
  const sum = (pick: (tally: Tally) => number) =>
    [...tallies.values()].reduce((total, tally) => total + pick(tally), 0);
  const report = [...tallies]
    .map(
      ([intent, { right, intents, filled, slots }]) =>
        `${intent.padEnd(12)} intents ${right}/${intents} slots ${filled}/${slots}`,
    )
    .join('\n');
  if (process.env.PHRASES_REPORT) process.stdout.write(`${report}\n${misses.join('\n')}\n`);

  test('there are at least 300 of them, of every intent', () => {
    expect(phrases.length).toBeGreaterThanOrEqual(300);
    expect(tallies.size).toBeGreaterThanOrEqual(26);
  });

  test('at least 97 in 100 intents are right', () => {
    expect(
      sum((tally) => tally.right) / sum((tally) => tally.intents),
      misses.join('\n'),
    ).toBeGreaterThanOrEqual(0.97);
  });

  test('at least 97 in 100 slots are right', () => {
    expect(
      sum((tally) => tally.filled) / sum((tally) => tally.slots),
      misses.join('\n'),
    ).toBeGreaterThanOrEqual(0.97);
  });

  test('every emergency and medical phrase is read as what it is', () => {
    const urgent = phrases.filter((phrase) => URGENT.has(phrase.intents[0] ?? ''));
    expect(urgent.length).toBeGreaterThan(120);
    expect(
      urgent
        .filter((phrase) => !phrase.intents.includes(readPhrase(phrase).intent))
        .map((phrase) => phrase.text),
    ).toEqual([]);
  });

  test('nothing else is taken for an emergency', () => {
    const calm = phrases.filter((phrase) => !phrase.intents.includes('emergency'));
    expect(
      calm.filter((phrase) => readPhrase(phrase).intent === 'emergency').map((phrase) => phrase.text),
    ).toEqual([]);
  });
});
