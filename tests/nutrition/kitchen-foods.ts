import type { AllergenMark } from '../../src/nutrition/allergens.ts';
import type { Food } from '../../src/nutrition/food.ts';

/** A plain food for tests that need only what it is and what its label says. */
export function foodNamed(name: string, more: Partial<Food> = {}): Food {
  return {
    id: name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-'),
    name,
    aliases: [],
    group: 'Vegetables',
    source: { kind: 'estimate', note: 'made for a test' },
    per100g: {},
    portions: [],
    contains: [],
    advisory: [],
    allergenBasis: 'label',
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

export const holding = (name: string, ...contains: AllergenMark[]): Food => foodNamed(name, { contains });
