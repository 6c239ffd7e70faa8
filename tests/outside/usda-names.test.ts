import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { loadFoods } from '../../src/book/load-foods.ts';
import { createFoodIndex } from '../../src/nutrition/find-food.ts';
import { parseIngredientList } from '../../src/nutrition/ingredient-list.ts';

// Source of figures and grams: US Department of Agriculture, Agricultural Research Service, Nutrient Data Laboratory,
// USDA National Nutrient Database for Standard Reference, Release 28 (2015), NUT_DATA and WEIGHT. kcal per 100 g.
const foods = loadFoods([fileURLToPath(new URL('../../recipes', import.meta.url))]).foods;
const index = createFoodIndex(foods.values());

/** The words a person types, the record they mean, its kcal per 100 g, and grams of one of a measure. */
type Named = readonly [words: string, ndbNo: string, energyKcal: number, measure: string, massG: number];
// biome-ignore format: one row a food
const NAMED: readonly Named[] = [
  ['cooked quinoa', '20137', 120, 'cup', 185],
  ['egg white', '01124', 52, 'cup', 243],
  ['greek yogurt nonfat plain', '01256', 59, 'cup', 245],
  ['non-fat plain Greek yogurt', '01256', 59, 'cup', 245],
  ['medjool dates', '09421', 277, 'each', 24],
  ['avocado', '09037', 160, 'cup', 150],
  ['chicken breast cooked', '05064', 165, 'cup', 140],
  ['low-fat (1%) milk', '01082', 42, 'cup', 244],
  ['fat-free milk', '01085', 34, 'cup', 245],
  ['Milk, low-fat (1%)', '01082', 42, 'cup', 244],
  ['Flour, whole-wheat', '20080', 340, 'cup', 120],
  ['All-purpose flour, enriched', '20081', 364, 'cup', 125],
  ['Large eggs (or frozen whole eggs, thawed)', '01123', 143, 'each', 50],
  ['Oats, rolled, dry', '08120', 379, 'cup', 81],
  ['quick or old fashioned oats', '08120', 379, 'cup', 81],
  ['Cranberries, dried', '09079', 308, 'cup', 160],
  ['Brown sugar, packed', '19334', 380, 'cup', 220],
  ['Blueberries, whole, frozen, unsweetened', '09054', 51, 'cup', 155],
  ['Bananas, fresh, mashed', '09040', 89, 'cup', 225],
  ['apples, peeled, sliced', '09003', 52, 'cup', 109],
  ['almonds, sliced', '12061', 579, 'cup', 92],
  ['Yogurt, low-fat (vanilla or plain)', '01119', 85, 'cup', 245],
  ['brown rice, cooked', '20037', 123, 'cup', 202],
  ['lentils, cooked', '16070', 116, 'cup', 198],
  ['Cinnamon, ground', '02010', 247, 'tbsp', 7.8],
  ['sweet potatoes, cubed', '11507', 86, 'cup', 133],
  ['unsweetened applesauce', '09019', 42, 'cup', 244],
  ['100% orange juice', '09209', 49, 'cup', 249],
];

const only = (text: string) => {
  const { counted, uncounted } = parseIngredientList(text, index);
  expect(uncounted).toEqual([]);
  expect(counted).toHaveLength(1);
  return counted[0];
};

describe('USDA foods by the names people give them', () => {
  test('are at least twenty-five', () => {
    expect(NAMED.length).toBeGreaterThanOrEqual(25);
  });

  test.each(NAMED)('%s is NDB %s at %f kcal, 1 %s = %f g', (words, ndbNo, energyKcal, measure, massG) => {
    const hundred = only(`100 g ${words}`);
    expect(hundred?.food.source).toMatchObject({ kind: 'usda_sr28', ndbNo });
    expect(hundred?.food.per100g.energyKcal).toBe(energyKcal);
    expect(hundred?.massG).toBe(100);
    expect(only(`1 ${measure} ${words}`)?.massG).toBeCloseTo(massG, 6);
  });

  test.each([
    ['raw chicken breast', 'chicken-breast'],
    ['fresh figs', 'figs-dried'],
    ['raw ground turkey', 'turkey-breast'],
  ])('%s is not read as the food in another state (%s)', (words, wrong) => {
    expect(only(`100 g ${words}`)?.food.id).not.toBe(wrong);
  });
});
