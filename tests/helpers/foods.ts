import type { Food } from '../../src/nutrition/food.ts';
import type { Nutrients } from '../../src/nutrition/nutrients.ts';
import type { Recipe, RecipeLine } from '../../src/nutrition/recipe.ts';

/** A small food for tests; figures per 100 g, everything else plain unless said. */
export function foodOf(id: string, per100g: Nutrients, more: Partial<Food> = {}): Food {
  return {
    id,
    name: id.replaceAll('_', ' '),
    aliases: [],
    group: 'test',
    source: { kind: 'estimate', note: 'made for a test' },
    per100g,
    portions: [],
    contains: [],
    advisory: [],
    allergenBasis: 'kind',
    gluten: 'no_gluten_grain',
    lactose: 'none',
    vegan: true,
    vegetarian: true,
    meat: false,
    pork: false,
    roles: [],
    storage: 'dry',
    ...more,
  };
}

const sr28 = (ndbNo: string, description: string): Food['source'] => ({
  kind: 'usda_sr28',
  ndbNo,
  description,
});

/** USDA SR28 records, figures and portions as published (US Department of Agriculture, SR28, 2015). */
export const oats = foodOf(
  'rolled_oats',
  {
    energyKcal: 379,
    proteinG: 13.15,
    fatG: 6.52,
    carbohydrateG: 67.7,
    fiberG: 10.1,
    sugarsG: 0.99,
    calciumMg: 52,
    sodiumMg: 6,
    leucineG: 0.98,
  },
  {
    source: sr28('08120', 'Cereals, oats, regular and quick, not fortified, dry'),
    energyFactors: { protein: 3.46, fat: 8.37, carbohydrate: 4.12 },
    portions: [{ unit: 'cup', massG: 81 }],
    aliases: ['oats'],
    roles: ['dry_base'],
  },
);

export const peanutButter = foodOf(
  'peanut_butter',
  {
    energyKcal: 598,
    proteinG: 22.21,
    fatG: 51.36,
    carbohydrateG: 22.31,
    fiberG: 5,
    sugarsG: 10.49,
    calciumMg: 49,
    sodiumMg: 426,
  },
  {
    source: sr28('16098', 'Peanut butter, smooth style, with salt'),
    energyFactors: { protein: 3.47, fat: 8.37, carbohydrate: 4.07 },
    portions: [{ unit: 'tbsp', massG: 16 }],
    contains: [{ allergen: 'peanut' }],
    roles: ['binder', 'fat'],
  },
);

export const milk2 = foodOf(
  'milk_2_percent',
  {
    energyKcal: 50,
    proteinG: 3.3,
    fatG: 1.98,
    carbohydrateG: 4.8,
    fiberG: 0,
    sugarsG: 5.06,
    calciumMg: 120,
    sodiumMg: 47,
  },
  {
    source: sr28('01079', 'Milk, reduced fat, fluid, 2% milkfat'),
    energyFactors: { protein: 4.27, fat: 8.79, carbohydrate: 3.87 },
    portions: [{ unit: 'cup', massG: 244 }],
    contains: [{ allergen: 'milk' }],
    lactose: 'contains',
    vegan: false,
    roles: ['liquid'],
    storage: 'cold',
  },
);

/** No leucine figure in SR28: totals of leucine over it are "at least". */
export const wheyPowder = foodOf(
  'whey_powder',
  {
    energyKcal: 352,
    proteinG: 78.13,
    fatG: 1.56,
    carbohydrateG: 6.25,
    fiberG: 3.1,
    sugarsG: 0,
    calciumMg: 469,
    sodiumMg: 156,
  },
  {
    source: sr28('14066', 'Beverages, Protein powder whey based'),
    portions: [{ unit: 'scoop', massG: 30 }],
    contains: [{ allergen: 'milk' }],
    lactose: 'contains',
    vegan: false,
    roles: ['protein'],
  },
);

/** A recipe line of `massG` grams; weighed unless said. */
export function lineOf(food: Food, massG: number, more: Partial<RecipeLine> = {}): RecipeLine {
  return {
    foodId: food.id,
    amount: { numerator: massG, denominator: 1 },
    unit: 'g',
    written: `${massG} g ${food.name}`,
    massG,
    role: food.roles[0] ?? 'flavor',
    measuredBy: 'weighed',
    optional: false,
    ...more,
  };
}

/** A no-bake bar recipe with the given lines, cut into 8, nothing lost unless said. */
export function recipeOf(id: string, lines: readonly RecipeLine[], more: Partial<Recipe> = {}): Recipe {
  return {
    id,
    title: id.replaceAll('_', ' '),
    aliases: [],
    kind: 'no_bake_bar',
    version: '2026-01-05',
    yieldPieces: 8,
    pieceUnit: 'bar',
    lines,
    moistureLoss: 0,
    handlingLoss: 0,
    steps: [],
    storage: 'refrigerated',
    shelfLifeDays: 5,
    tags: [],
    ...more,
  };
}

export const foodsOf = (...foods: readonly Food[]): ReadonlyMap<string, Food> =>
  new Map(foods.map((food) => [food.id, food]));
