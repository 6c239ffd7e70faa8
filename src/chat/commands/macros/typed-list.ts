import { type FoodFinder, parseIngredientList } from '../../../nutrition/ingredient-list.ts';
import type { Slots } from '../../slots.ts';

const FIRST_AMOUNT = /[\d½⅓⅔¼¾⅛⅜⅝⅞]/;

/**
 * A list of several foods typed into one message, as the `items` slot. Slots hold one food and one amount, so a
 * longer list is read from the words themselves; otherwise all but its first line would be lost without a word.
 */
export function withTypedList(slots: Slots, text: string, foods: FoodFinder): Slots {
  const isOther = ['recipe', 'compare', 'remove', 'items'].some((name) => slots[name] !== undefined);
  const start = text.search(FIRST_AMOUNT);
  if (isOther || slots.ingredient === undefined || start < 0) return slots;
  const typed = text.slice(start);
  const list = parseIngredientList(typed, foods);
  if (list.counted.length === 0 || list.counted.length + list.uncounted.length < 2) return slots;
  const { nutrient, per, pieces, target, output } = slots;
  const kept = Object.entries({ nutrient, per, pieces, target, output }).filter(
    ([, value]) => value !== undefined,
  );
  return { ...Object.fromEntries(kept), items: [typed] };
}
