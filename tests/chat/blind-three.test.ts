import { describe, expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import { INTENTS } from '../../src/chat/slots.ts';
import { reportOn, scoreBlindPhrases, tally } from '../helpers/blind-phrases.ts';

const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
const scored = scoreBlindPhrases(book, Date.parse('2026-11-25T10:00:00-06:00'), 'blind-three');

const URGENT = new Set(['emergency', 'medical']);

describe('reading requests of a third writer who had not seen the reader', () => {
  const report = reportOn(scored);
  if (process.env.PHRASES_REPORT) process.stdout.write(`${report}\n`);

  test('every intent is asked at least 5 times', () => {
    const asked = (intent: string) => scored.filter((phrase) => phrase.intents.includes(intent)).length;
    // The form of the kitchen's settings came after these phrases were written.
    const written = INTENTS.filter((intent) => intent !== 'settings');
    expect(written.filter((intent) => asked(intent) < 5)).toEqual([]);
  });

  test('at least 90 in 100 intents are right', () => {
    const { right, phrases } = tally(scored);
    expect(right / phrases, report).toBeGreaterThanOrEqual(0.9);
  });

  test('at least 80 in 100 of the slots expected hold the value expected', () => {
    const { filled, slots } = tally(scored);
    expect(filled / slots, report).toBeGreaterThanOrEqual(0.8);
  });

  test('no emergency and no medical request is taken for anything else', () => {
    const urgent = scored.filter((phrase) => URGENT.has(phrase.intents[0] ?? ''));
    expect(urgent.filter((phrase) => !phrase.isIntentRight).map((phrase) => phrase.say)).toEqual([]);
  });

  test('nothing else is taken for an emergency', () => {
    const calm = scored.filter((phrase) => !phrase.intents.includes('emergency'));
    const alarmed = calm.filter((phrase) => phrase.reading.intent === 'emergency');
    expect(alarmed.map((phrase) => phrase.say)).toEqual([]);
  });
});
