import { describe, expect, test } from 'vitest';
import { undeclared } from '../../src/book/name-rules.ts';

const NOTHING = { contains: [], advisory: [] };
const demanded = (words: string) => undeclared(words, NOTHING).map(({ allergen }) => allergen);

describe('names that demand an allergen', () => {
  test.each([
    ['Milk, 2 %', ['milk']],
    ['Kitchen whey, vanilla', ['milk']],
    ['Sodium caseinate', ['milk']],
    ['Almond milk', ['tree_nut']],
    ['Coconut milk, canned', ['coconut']],
    ['Soymilk', ['soy']],
    ['Peanut butter', ['peanut']],
    ['Almond butter', ['tree_nut']],
    ['Sunflower seed butter', ['sunflower']],
    ['Tahini', ['sesame']],
    ['soy lecithin', ['soy']],
    ['Whole wheat flour', ['wheat']],
    ['Gluten-free bread with wheat starch', ['wheat']],
    ['Graham crackers', ['wheat']],
    ['barley malt', ['gluten_cereal']],
    ['Mayonnaise', ['egg']],
    ['Tuna in water', ['fish']],
    ['Peanut oil, refined', ['peanut']],
    ['Mixed nuts', ['tree_nut']],
    ['Celery', ['celery']],
    ['Lupin flour', ['lupin']],
    ['apricots (sulfur dioxide)', ['sulphites']],
  ])('"%s" demands %j', (name, allergens) => {
    expect(demanded(name)).toEqual(allergens);
  });

  test.each([
    'Cocoa butter',
    'Apple butter',
    'Butternut squash',
    'Nutmeg',
    'Eggplant',
    'Butter beans',
    'Cream of tartar',
    'Milk-free spread',
    'Buckwheat groats',
    'Corn tortilla',
    'Rice flour',
    'Gluten-free crackers',
    'Water chestnuts',
    'Coconut-free granola',
    'Egg-free batter',
    'Vegan cheese',
    'Oyster mushrooms',
    'Unsulfured molasses',
    'High oleic sunflower oil',
  ])('"%s" demands nothing', (name) => {
    expect(demanded(name)).toEqual([]);
  });

  test('a declared allergen is not demanded again', () => {
    expect(undeclared('Whey and egg', { contains: [{ allergen: 'milk' }], advisory: [] })).toEqual([
      { allergen: 'egg', word: 'egg' },
    ]);
  });

  test('an advisory is enough for a refined oil and for nothing else', () => {
    const advised = { contains: [], advisory: [{ allergen: 'peanut' as const }] };
    expect(undeclared('Peanut oil', advised)).toEqual([]);
    expect(undeclared('Peanut flour', advised).map(({ allergen }) => allergen)).toContain('peanut');
  });
});
