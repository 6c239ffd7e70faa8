import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import { read } from '../../src/chat/reading/read.ts';
import { INTENTS } from '../../src/chat/slots.ts';
import { loadPhrases } from '../helpers/phrases.ts';

const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
const nowMs = Date.parse('2026-11-25T10:00:00-06:00');
const said = (text: string) => read(text, { book, conversation: {}, nowMs });
const numRuns = Number(process.env.FC_RUNS ?? 1_000);

const vocabulary = loadPhrases().flatMap((phrase) => phrase.text.split(' '));
const anything = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
  fc.array(fc.constantFrom(...vocabulary), { maxLength: 30 }).map((words) => words.join(' ')),
);

describe('reading any text', () => {
  test('never throws, names a known intent, and gives plain JSON', () => {
    fc.assert(
      fc.property(anything, (text) => {
        const reading = said(text);
        expect(INTENTS).toContain(reading.intent);
        expect(JSON.parse(JSON.stringify(reading))).toEqual(reading);
      }),
      { numRuns },
    );
  });

  test('gives the same reading every time', () => {
    fc.assert(
      fc.property(anything, (text) => {
        expect(said(text)).toEqual(said(text));
      }),
      { numRuns: Math.ceil(numRuns / 10) },
    );
  });

  test.each([
    ['ten thousand characters', '40 oat bars '.repeat(900)],
    ['one word of ten thousand letters', 'a'.repeat(10_000)],
    ['ten thousand digits', '9'.repeat(10_000)],
    ['lone surrogates', '40 \ud800 oat \udfff bars'],
    ['nothing', ''],
    ['white space', ' \t\n\r '],
    ['signs', '!@#$%^&*()_+{}|:"<>?-=[]\\;\',./`~'],
    ['many commas', ','.repeat(2_000)],
    ['nested brackets', '('.repeat(2_000)],
    ['many unknown words', Array.from({ length: 400 }, (_, i) => `zq${i}x`).join(' ')],
  ])('takes %s within a second', (_, text) => {
    const start = performance.now();
    expect(INTENTS).toContain(said(text).intent);
    expect(performance.now() - start).toBeLessThan(1_000);
  });

  test.each([
    ['40\u00a0oat\u200bbars', 'scale'],
    ['\u202e40 oat bars\u202c', 'scale'],
    ['<@U0123ABCD> 40 oat bars', 'scale'],
    ['<!channel> 40 oat bars', 'scale'],
    ['\u200f40 oat bars', 'scale'],
    ['“40 oat bars”', 'scale'],
    ['*40* oat bars', 'scale'],
  ])('reads %j past its marks', (text, intent) => {
    expect(said(text)).toMatchObject({ intent, slots: { quantity: 40, unit: 'bar' } });
  });

  test('keeps a number the kitchen cannot use, so that the answer can say so', () => {
    expect(said('-3 bars')).toMatchObject({ intent: 'scale', slots: { quantity: -3 } });
    expect(said('1e9 bars')).toMatchObject({ intent: 'scale', slots: { quantity: 1e9 } });
    expect(said('0 bars')).toMatchObject({ intent: 'scale', slots: { quantity: 0 } });
    expect(said('1/0 cup oats in grams')).toMatchObject({ intent: 'measure', slots: { amount: '1/0' } });
  });
});

test('an emergency at the very end of the longest message is read', () => {
  const last = ' also he cant breathe';
  const message = 'oat bars and honey '.repeat(300).slice(0, 4_000 - last.length) + last;
  expect(said(message).intent).toBe('emergency');
});
