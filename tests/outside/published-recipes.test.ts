import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { comparePublished, publishedRecipes, publishedShares } from './published.ts';
import { PUBLISHED_TOLERANCES, type PublishedNutrient } from './tolerances.ts';

// Sources stand in each file of tests/outside/published: government and university recipes with what they print.
const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const recipes = publishedRecipes(here('published'));
const outcomes = await comparePublished(here('../../recipes'), here('published'));
const WAYS = ['typed', 'card'] as const;
const NUTRIENTS = Object.keys(PUBLISHED_TOLERANCES) as PublishedNutrient[];

describe('recipes published by others, typed into the chat and written as cards', () => {
  test('are at least sixteen, each with its source and its energy', () => {
    expect(recipes.length).toBeGreaterThanOrEqual(16);
    for (const { source, printed, typed, card } of recipes) {
      expect(source.length).toBeGreaterThan(20);
      expect(printed.energyKcal).toBeGreaterThan(0);
      expect(typed).toMatch(/\d/);
      expect(card.ingredients).toBeDefined();
    }
  });

  test('are all compared on both ways, none skipped, none without a figure', () => {
    expect(outcomes).toHaveLength(recipes.length * WAYS.length);
    const printed = recipes.reduce((sum, one) => sum + Object.keys(one.printed).length, 0);
    expect(outcomes.flatMap((outcome) => outcome.figures)).toHaveLength(printed * WAYS.length);
    const lost = outcomes.flatMap(({ recipe, way, figures }) =>
      figures
        .filter((one) => one.ours === undefined)
        .map(({ nutrient }) => `${recipe.file} ${way} ${nutrient}`),
    );
    expect(lost).toEqual([]);
  });

  test('load as cards without a complaint', () => {
    expect(
      outcomes.flatMap(({ recipe, problems }) => problems.map((one) => `${recipe.file} ${one}`)),
    ).toEqual([]);
  });

  test('lose no ingredient: only titles and pan spray stay uncounted', () => {
    const uncounted = outcomes.flatMap(({ notCounted }) => notCounted.map(({ written }) => written));
    expect(uncounted.filter((line) => !/squares|muffins$|spray/i.test(line))).toEqual([]);
  });

  describe.each(WAYS)('%s', (way) => {
    test.each(NUTRIENTS)('%s is as near as its tolerance says', (nutrient) => {
      const { share, within, mean } = PUBLISHED_TOLERANCES[nutrient];
      const shares = publishedShares(outcomes, way, nutrient);
      expect(shares.length).toBeGreaterThan(10);
      expect(shares.filter((one) => one <= within).length / shares.length).toBeGreaterThanOrEqual(share);
      expect(shares.reduce((sum, one) => sum + one, 0) / shares.length).toBeLessThanOrEqual(mean);
    });
  });

  test('come to the same energy typed and as a card, within a spray of oil', () => {
    const energyOf = (way: (typeof WAYS)[number]) =>
      outcomes
        .filter((outcome) => outcome.way === way)
        .map(({ figures }) => figures.find((one) => one.nutrient === 'energy')?.ours ?? Number.NaN);
    const card = energyOf('card');
    for (const [place, typed] of energyOf('typed').entries()) {
      expect(Math.abs(typed / (card[place] ?? Number.NaN) - 1)).toBeLessThan(0.005);
    }
  });
});
