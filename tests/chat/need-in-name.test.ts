import { describe, expect, test } from 'vitest';
import { read } from '../../src/chat/reading/read.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });
const readingOf = (text: string) =>
  read(text, { book: kitchen.book, conversation: {}, nowMs: kitchen.clock.nowMs() });

describe('a need before the name of a dish', () => {
  test.each([
    ['gluten free oat bars', 'swap'],
    ['gf oat bars', 'swap'],
    ['40 gluten free oat bars', 'scale'],
  ])('%j is that dish with the need, though a food is called "gluten free oats"', (text, intent) => {
    expect(readingOf(text)).toMatchObject({ intent, slots: { recipe: 'oat-bars', avoid: ['gluten'] } });
  });

  test('is kept beside another need, though a recipe is called "gluten-free bars"', () => {
    const { slots } = readingOf('vegan and gluten-free bars');
    expect(slots).toMatchObject({ avoid: ['animal', 'gluten'] });
    expect(slots.recipe).toBeUndefined();
  });

  test('alone still names the recipe that is called so', () => {
    expect(readingOf('gluten-free bars').slots).toMatchObject({ recipe: 'almond-apricot-bars' });
  });
});

test('a made-up dish is no illness misspelled', () => {
  expect(readingOf('40 moon bars').intent).toBe('scale');
});
