import { describe, expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import { INTENTS } from '../../src/chat/slots.ts';
import { reportOn, scoreBlindPhrases, tally } from './blind-phrases.ts';

const URGENT = new Set(['emergency', 'medical']);

export interface BlindBar {
  /** How often each intent is asked, at least. */
  readonly askedEach: number;
  /** Of 100, at least. */
  readonly intents: number;
  /** Of 100 slots expected, at least. */
  readonly slots: number;
}

/** Holds the reader to one folder of phrases by a writer who had not seen it; `PHRASES_REPORT=1` prints the scores. */
export function describeBlindSet(title: string, folder: string, bar: BlindBar): void {
  const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
  const scored = scoreBlindPhrases(book, Date.parse('2026-11-25T10:00:00-06:00'), folder);

  describe(title, () => {
    const report = reportOn(scored);
    if (process.env.PHRASES_REPORT) process.stdout.write(`${report}\n`);

    test(`every intent is asked at least ${bar.askedEach} times`, () => {
      const asked = (intent: string) => scored.filter((phrase) => phrase.intents.includes(intent)).length;
      // Settings are changed on a form; words only show them, and nobody has written such words blind.
      const written = INTENTS.filter((intent) => intent !== 'settings');
      expect(written.filter((intent) => asked(intent) < bar.askedEach)).toEqual([]);
    });

    test(`at least ${bar.intents} in 100 intents are right`, () => {
      const { right, phrases } = tally(scored);
      expect(right / phrases, report).toBeGreaterThanOrEqual(bar.intents / 100);
    });

    test(`at least ${bar.slots} in 100 of the slots expected hold the value expected`, () => {
      const { filled, slots } = tally(scored);
      expect(filled / slots, report).toBeGreaterThanOrEqual(bar.slots / 100);
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
}
