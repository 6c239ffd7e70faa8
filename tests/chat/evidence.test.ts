import { describe, expect, test } from 'vitest';
import { likelihood, weigh } from '../../src/chat/reading/evidence/weigh.ts';
import { INTENTS } from '../../src/chat/slots.ts';
import { type Learned, type Lesson, learn } from '../learn/learn.ts';
import { FOLDERS, lessonsIn } from '../learn/lessons.ts';

/** The intent that some words alone speak for most. */
function likeliest(weights: Learned, words: readonly string[]): string | undefined {
  const sums = new Map<string, number>();
  for (const word of words)
    for (const [intent, weight] of weights.get(word) ?? [])
      sums.set(intent, (sums.get(intent) ?? 0) + weight);
  return [...sums].sort((a, b) => b[1] - a[1])[0]?.[0];
}

const shareRight = (weights: Learned, lessons: readonly Lesson[]): number =>
  lessons.filter(({ words, intent }) => likeliest(weights, words) === intent).length / lessons.length;

describe('the weights of words', () => {
  // The writers of the blind folders had seen neither the reader nor each other's phrases.
  test.each(FOLDERS.filter((folder) => folder.startsWith('blind')))(
    'learned without %s tell the intent of at least 80 in 100 of its requests by themselves',
    (folder) => {
      const weights = learn(lessonsIn(FOLDERS.filter((other) => other !== folder)));
      expect(shareRight(weights, lessonsIn([folder]))).toBeGreaterThan(0.8);
    },
  );

  test('learning is the same every time', () => {
    const lessons = lessonsIn(['blind']).slice(0, 100);
    expect(learn(lessons)).toEqual(learn(lessons));
  });

  test('say nothing of words nobody wrote, which are counted as strange', () => {
    const evidence = weigh(' zorblat quux ');
    expect(evidence.strange).toBe(1);
    expect([...evidence.sums].every((sum) => sum === 0)).toBe(true);
    expect(likelihood(evidence, 0)).toBeCloseTo(1 / INTENTS.length);
  });

  test('speak for what the words are about', () => {
    const likely = (shape: string) => {
      const evidence = weigh(shape);
      return INTENTS.filter((_, i) => likelihood(evidence, i) > 0.5);
    };
    expect(likely(' how much M in R ')).toEqual(['macros']);
    expect(likely(' which lot went in R ')).toEqual(['trace']);
    expect(likely('')).toEqual([]);
  });
});
