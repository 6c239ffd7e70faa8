import type { Food, Portion } from '../../src/nutrition/food.ts';
import type { Nutrients } from '../../src/nutrition/nutrients.ts';

/** A food for tests: only what a test states is set apart from the plainest values. */
export function makeFood(
  id: string,
  portions: readonly Portion[],
  per100g: Nutrients = {},
  rest: Partial<Food> = {},
): Food {
  return {
    id,
    name: id.replaceAll('_', ' ').replaceAll('-', ' '),
    aliases: [],
    group: 'test',
    source: { kind: 'estimate', note: 'made for a test' },
    per100g,
    portions,
    contains: [],
    advisory: [],
    allergenBasis: 'kind',
    gluten: 'no_gluten_grain',
    lactose: 'none',
    vegan: true,
    vegetarian: true,
    meat: false,
    pork: false,
    roles: ['dry_base'],
    storage: 'dry',
    ...rest,
  };
}

/** Figures of USDA SR28: 08120, 16098, 01079, 19296, 01123, 14066 (30 g a scoop), 02047, 01001. */
export const OATS = makeFood('rolled-oats', [{ unit: 'cup', massG: 81 }], {
  proteinG: 13.15,
  energyKcal: 379,
});
export const PEANUT_BUTTER = makeFood(
  'peanut-butter',
  [{ unit: 'tbsp', massG: 16 }],
  { proteinG: 22.21, energyKcal: 598 },
  { price: { priceCents: 399, packageG: 454, packageName: '16 oz jar', section: 'dry goods' } },
);
export const MILK = makeFood('milk-2', [{ unit: 'cup', massG: 244 }], { proteinG: 3.3, energyKcal: 50 });
export const HONEY = makeFood(
  'honey',
  [
    { unit: 'cup', massG: 339 },
    { unit: 'tbsp', massG: 21 },
  ],
  {
    proteinG: 0.3,
    energyKcal: 304,
  },
);
export const EGG = makeFood(
  'egg',
  [
    { unit: 'medium', massG: 44 },
    { unit: 'large', massG: 50 },
  ],
  {
    proteinG: 12.56,
    energyKcal: 143,
  },
);
export const WHEY = makeFood('kitchen-whey', [{ unit: 'scoop', massG: 30 }], {
  proteinG: 78.13,
  energyKcal: 352,
});
export const SALT = makeFood('table-salt', [{ unit: 'tsp', massG: 6 }], { proteinG: 0, energyKcal: 0 });
export const BUTTER = makeFood(
  'butter',
  [
    { unit: 'tbsp', massG: 14.2 },
    { unit: 'stick', massG: 113 },
  ],
  { proteinG: 0.85, energyKcal: 717 },
);
export const STRAWBERRY = makeFood('strawberries', [
  { unit: 'cup', qualifier: 'halves', massG: 152 },
  { unit: 'cup', qualifier: 'sliced', massG: 166 },
  { unit: 'medium', massG: 12 },
]);
export const PEA_PROTEIN = makeFood('pea-protein', [], { proteinG: 80, energyKcal: 380 });
