import { readCard } from '../../src/book/read-card.ts';
import { DEFAULT_SETTINGS } from '../../src/book/settings-file.ts';
import { createFoodIndex } from '../../src/nutrition/find-food.ts';
import type { Food } from '../../src/nutrition/food.ts';
import { foodNamed } from '../nutrition/kitchen-foods.ts';

/** A small larder for card tests: real USDA portions, so that grams can be checked by hand. */
export const larder: readonly Food[] = [
  foodNamed('Rolled oats', {
    aliases: ['oats'],
    roles: ['dry_base'],
    portions: [{ unit: 'cup', massG: 81 }],
  }),
  foodNamed('Milk, 2 %', {
    aliases: ['milk', '2% milk'],
    roles: ['liquid'],
    portions: [{ unit: 'cup', massG: 244 }],
  }),
  foodNamed('Honey', { roles: ['binder', 'sweetener'], portions: [{ unit: 'tbsp', massG: 21 }] }),
  foodNamed('Egg, whole', {
    aliases: ['egg', 'eggs'],
    roles: ['binder'],
    portions: [{ unit: 'large', massG: 50 }],
  }),
  foodNamed('Greek yogurt, plain, nonfat', { aliases: ['greek yogurt'], roles: ['binder'] }),
  foodNamed('Black beans, canned', {
    aliases: ['black beans'],
    roles: ['protein'],
    portions: [{ unit: 'cup', massG: 240 }],
  }),
  foodNamed('Salt', { roles: ['flavor'], portions: [{ unit: 'tsp', massG: 6 }] }),
  foodNamed('Banana', {
    aliases: ['bananas'],
    roles: ['binder'],
    portions: [
      { unit: 'cup', qualifier: 'mashed', massG: 225 },
      { unit: 'cup', qualifier: 'sliced', massG: 150 },
      { unit: 'medium', massG: 118 },
    ],
  }),
];

const settings = {
  ...DEFAULT_SETTINGS,
  pans: [
    { id: '8x8', name: '8 x 8 in pan', lengthIn: 8, widthIn: 8, depthIn: 2 },
    { id: '9x13', name: '9 x 13 in pan', lengthIn: 13, widthIn: 9, depthIn: 2 },
    { id: 'half_sheet', name: 'half sheet pan', lengthIn: 17, widthIn: 12, depthIn: 1 },
  ],
};

/** Reads a card against the larder. */
export const read = (card: unknown) =>
  readCard(card, { finder: createFoodIndex(larder), settings, fallbackId: 'from-file' });

/** The least a recipe needs, with more put over it. */
export const plain = (more: Record<string, unknown> = {}) => ({
  title: 'Test bars',
  yield: '12 bars',
  ingredients: ['2 cups rolled oats', '1/2 cup milk'],
  ...more,
});

/** The recipe of a card that is right. */
export function recipeOf(card: unknown) {
  const { recipe, complaints } = read(card);
  if (!recipe) throw new Error(JSON.stringify(complaints));
  return recipe;
}
