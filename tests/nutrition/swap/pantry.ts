import type { AllergenMark } from '../../../src/nutrition/allergens.ts';
import type { Food, Role } from '../../../src/nutrition/food.ts';
import type { Recipe, RecipeLine } from '../../../src/nutrition/recipe.ts';
import { foodNamed } from '../kitchen-foods.ts';

type Figures = readonly [water: number, protein: number, fat: number, carbohydrate: number, sugars: number];

function stocked(
  name: string,
  group: string,
  roles: readonly Role[],
  [waterG, proteinG, fatG, carbohydrateG, sugarsG]: Figures,
  cup: number,
  more: Partial<Food> = {},
): Food {
  return foodNamed(name, {
    group,
    roles,
    per100g: {
      waterG,
      proteinG,
      fatG,
      carbohydrateG,
      sugarsG,
      energyKcal: 4 * (proteinG + carbohydrateG) + 9 * fatG,
    },
    portions: [{ unit: 'cup', massG: cup }],
    ...more,
  });
}

const powder = (
  name: string,
  holds: AllergenMark[],
  protein: number,
  approved: boolean,
  more: Partial<Food> = {},
): Food =>
  stocked(name, 'Protein powders', ['protein'], [5, protein, 3, 10, 3], 90, {
    contains: holds,
    vegan: !holds.some((m) => m.allergen === 'milk' || m.allergen === 'egg'),
    lactose: holds.some((m) => m.allergen === 'milk') ? 'contains' : 'none',
    product: {
      servingG: 30,
      servingName: '1 scoop',
      perServing: {},
      ingredientsStatement: name,
      lots: [],
      approvedByDietitian: approved,
      proteinSource: 'whey',
    },
    ...more,
  });

const almond: AllergenMark = { allergen: 'tree_nut', species: 'almond' };

/** A small shelf, figures near USDA SR28; every package has been read unless its name says otherwise. */
export const PANTRY: ReadonlyMap<string, Food> = new Map(
  [
    stocked('Rolled oats', 'Grains', ['dry_base'], [10.8, 13.2, 6.5, 67.7, 1], 81, { allergenBasis: 'kind' }),
    stocked('Rolled oats, labelled gluten-free', 'Grains', ['dry_base'], [10.8, 13, 6.5, 67, 1], 81, {
      gluten: 'labelled_gluten_free',
    }),
    stocked('Milk, 2 %', 'Dairy', ['liquid'], [89, 3.3, 2, 4.8, 5], 244, {
      contains: [{ allergen: 'milk' }],
      lactose: 'contains',
      vegan: false,
      storage: 'cold',
    }),
    stocked('Soymilk, plain', 'Drinks', ['liquid'], [90, 2.9, 1.6, 3, 2], 243, {
      contains: [{ allergen: 'soy' }],
    }),
    stocked('Oat drink, labelled gluten-free', 'Drinks', ['liquid'], [90, 1, 1.5, 7, 4], 240, {
      gluten: 'labelled_gluten_free',
    }),
    stocked('Almond milk, unsweetened', 'Drinks', ['liquid'], [97, 0.6, 1.1, 0.6, 0], 240, {
      contains: [almond],
    }),
    stocked('Orange juice', 'Fruits', ['liquid'], [88, 0.7, 0.2, 10, 8], 248),
    stocked('Peanut butter, smooth', 'Nuts', ['binder', 'fat'], [1, 22, 51, 22, 10], 256, {
      contains: [{ allergen: 'peanut' }],
    }),
    stocked('Sunflower seed butter', 'Seeds', ['binder', 'fat'], [1, 17, 55, 23, 10], 256),
    stocked('Almond butter', 'Nuts', ['binder', 'fat'], [2, 21, 55, 19, 4], 256, { contains: [almond] }),
    stocked(
      'Pumpkin seed butter, line shared with nuts',
      'Seeds',
      ['binder', 'fat'],
      [2, 28, 48, 15, 2],
      256,
      {
        advisory: [{ allergen: 'tree_nut' }, { allergen: 'peanut' }],
      },
    ),
    stocked('Mayonnaise', 'Fats and oils', ['binder', 'fat'], [22, 1, 75, 1, 1], 220, {
      contains: [{ allergen: 'egg' }],
      vegan: false,
    }),
    stocked('Honey', 'Sweets', ['sweetener', 'binder'], [17, 0, 0, 82, 82], 339, { vegan: false }),
    stocked('Maple syrup', 'Sweets', ['sweetener', 'binder'], [32, 0, 0, 67, 60], 315),
    stocked('Sugar, granulated', 'Sweets', ['sweetener'], [0, 0, 0, 100, 100], 200),
    stocked('Chocolate chips', 'Sweets', ['crunch', 'flavor'], [1, 4, 30, 64, 54], 170, {
      contains: [{ allergen: 'milk' }, { allergen: 'soy' }],
      lactose: 'contains',
      vegan: false,
    }),
    stocked('Dark chocolate chips, dairy-free', 'Sweets', ['crunch', 'flavor'], [1, 6, 38, 50, 36], 170),
    stocked('Dark chocolate pieces, unread', 'Sweets', ['crunch', 'flavor'], [1, 6, 38, 50, 36], 170, {
      allergenBasis: 'kind',
    }),
    stocked('Walnuts', 'Nuts', ['crunch'], [4, 15, 65, 14, 3], 117, {
      contains: [{ allergen: 'tree_nut', species: 'walnut' }],
    }),
    stocked('Pumpkin seeds, roasted', 'Seeds', ['crunch'], [2, 30, 49, 15, 1], 118),
    powder('Kitchen whey, vanilla', [{ allergen: 'milk' }], 78, true),
    powder('Kitchen pea powder', [], 75, true),
    powder('Kitchen soy powder', [{ allergen: 'soy' }], 80, true),
    powder('Shelf pea powder, not approved', [], 79, false),
  ].map((food) => [food.id, food]),
);

export const onShelf = (id: string): Food => {
  const food = PANTRY.get(id);
  if (!food) throw new Error(`no ${id} in the test pantry`);
  return food;
};

const line = (foodId: string, massG: number, role: Role, optional = false): RecipeLine => ({
  foodId,
  amount: { numerator: massG, denominator: 1 },
  unit: 'g',
  written: `${massG} g`,
  massG,
  role,
  measuredBy: 'weighed',
  optional,
});

export const oatBar: Recipe = {
  id: 'test-oat-bar',
  title: 'Test oat bar',
  aliases: [],
  kind: 'no_bake_bar',
  version: '2026-01-05',
  yieldPieces: 8,
  pieceUnit: 'bar',
  lines: [
    line('rolled-oats', 240, 'dry_base'),
    line('kitchen-whey-vanilla', 150, 'protein'),
    line('peanut-butter-smooth', 130, 'binder'),
    line('honey', 85, 'sweetener'),
    line('milk-2-', 120, 'liquid'),
    line('chocolate-chips', 60, 'crunch'),
  ],
  moistureLoss: 0,
  handlingLoss: 0,
  steps: [],
  storage: 'refrigerated',
  shelfLifeDays: 5,
  wetDry: { least: 0.65, most: 0.85 },
  tags: [],
};

export const RECIPES: ReadonlyMap<string, Recipe> = new Map([[oatBar.id, oatBar]]);
