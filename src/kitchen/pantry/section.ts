import type { Food } from '../../nutrition/food.ts';

/** Where a shop keeps a food of a group, when no price list says so. Common practice, no source. */
const SECTION_OF_GROUP: Readonly<Record<string, string>> = {
  dairy: 'dairy',
  egg: 'dairy',
  spice: 'spices',
  condiment: 'condiments',
  'fat and oil': 'oils',
  meat: 'meat',
  grain: 'dry goods',
  fruit: 'produce',
  vegetable: 'produce',
  'nut and seed': 'nuts and seeds',
  'plant milk': 'dairy',
  'protein powder': 'protein',
  drink: 'drinks',
  sweet: 'baking',
  fish: 'fish',
  legume: 'canned',
  baked: 'bakery',
  leavening: 'baking',
  snack: 'snacks',
};

/** The section of the shop a food is bought in. */
export const sectionOf = (food: Food): string =>
  food.price?.section ?? SECTION_OF_GROUP[food.group] ?? (food.storage === 'frozen' ? 'frozen' : 'other');
