import { describe, expect, test } from 'vitest';
import { loadFoods } from '../../src/book/load-foods.ts';
import { createFoodIndex } from '../../src/nutrition/find-food.ts';

const { foods } = loadFoods(['recipes']);
const index = createFoodIndex(foods.values());

describe('finding a food by the words people type', () => {
  test.each([
    ['pb', 'peanut-butter'],
    ['PB', 'peanut-butter'],
    ['evoo', 'olive-oil'],
    ['1%', 'milk-1'],
    ['milk', 'milk-2'],
    ['powder', 'whey-vanilla'],
    ['protein powder', 'whey-vanilla'],
    ['choc chips', 'chocolate-chips'],
    ['dates', 'dates'],
    ['Medjool date', 'dates-medjool'],
    ['oats', 'rolled-oats'],
    ['GF oats', 'oats-gluten-free'],
    ['eggs', 'egg'],
    ['strawberry', 'strawberries'],
    ['half & half', 'half-and-half'],
    ['coconut milk', 'coconut-milk-drink'],
    ['peanut-butter', 'peanut-butter'],
  ])('"%s" is %s', (words, id) => {
    expect(index.find(words)?.id).toBe(id);
  });

  test('what no food is called is not guessed', () => {
    for (const words of ['', 'penut buter', 'xyzzy', '%', '🍪', '__proto__', 'constructor'])
      expect(index.find(words), words).toBeUndefined();
  });

  test.each([
    ['penut buter', 'peanut-butter'],
    ['vanila whey', 'whey-vanilla'],
    ['greek yogrt', 'greek-yogurt'],
    ['almnd milk', 'almond-milk'],
    ['sunflowr butter', 'sunflower-butter'],
  ])('"%s" brings %s among the nearest three', (words, id) => {
    expect(index.nearest(words, 3).map((food) => food.id)).toContain(id);
  });

  test('nearest gives at most what was asked, and nothing for noise or a whole page', () => {
    expect(index.nearest('butter', 2)).toHaveLength(2);
    expect(index.nearest('🍪', 3)).toEqual([]);
    expect(index.nearest('oats '.repeat(2000), 3)).toEqual([]);
  });

  test('tells its vocabulary, each name leading back to its food', () => {
    const names = [...index.names()];
    expect(names.length).toBeGreaterThan(1200);
    for (const [name, id] of names) expect(index.find(name)?.id, name).toBe(id);
  });
});
