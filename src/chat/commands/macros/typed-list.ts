import { type FoodFinder, parseIngredientList } from '../../../nutrition/ingredient-list.ts';
import type { Slots } from '../../slots.ts';

const FIRST_AMOUNT = /[\d½⅓⅔¼¾⅛⅜⅝⅞]/;
/** The request before the list: "macros", "what are the calories and protein per serving of". */
const ASKING =
  /^\W*(?:(?:please|pls|can you|could you|give me|show me|show|get|calculate|work out|what(?:'s| is| are)|the)\s+)*(?:macros?|nutrition(?:al)?(?: facts| info| label)?|nutrients?|label|calories|kcals?|energy|protein|carbs?|carbohydrates?|fat|fiber|sugars?|sodium)\b(?:\s*(?:,|and|&|\+)\s*(?:calories|kcals?|energy|protein|carbs?|carbohydrates?|fat|fiber|sugars?|sodium|macros?)\b)*(?:\s+per\s+(?:serving|portion|piece|bar|bite|muffin|cup))?\s*(?:(?:of|in|for)(?=\s+(?!\d+\s+(?:servings?|portions?|people)\b)))?\s*[:,-]?/i;

/** So many counted lines are a recipe of the asker's own, whatever else a word of it may mean. */
const SURELY_A_LIST = 3;

/**
 * A list of several foods typed into one message, as the `items` slot. Slots hold one food and one amount, so a
 * longer list is read from the words themselves; otherwise all but its first line would be lost without a word.
 */
export function withTypedList(slots: Slots, text: string, foods: FoodFinder): Slots {
  if (slots.items !== undefined) return slots;
  const isOther = ['recipe', 'compare', 'remove'].some((name) => slots[name] !== undefined);
  const typed = listIn(text);
  if (typed === undefined || (slots.ingredient === undefined && !isOther && !typed.includes('\n')))
    return slots;
  const list = parseIngredientList(typed, foods);
  if (list.counted.length === 0 || list.counted.length + list.uncounted.length < 2) return slots;
  if (isOther && (list.counted.length < SURELY_A_LIST || slots.remove !== undefined)) return slots;
  const { per, pieces, output } = slots;
  // "low-fat (1%)" in a long list is a milk, not a target.
  const target = list.counted.length < SURELY_A_LIST ? slots.target : undefined;
  const kept = Object.entries({ nutrient: nutrientsAsked(slots, text), per, pieces, target, output }).filter(
    ([, value]) => value !== undefined,
  );
  return { ...Object.fromEntries(kept), items: [typed] };
}

/** The nutrients named in the question; "low-fat" and "sugar" inside the list name foods. */
function nutrientsAsked({ nutrient }: Slots, text: string): Slots['nutrient'] {
  const asking = ASKING.exec(text)?.[0].toLowerCase();
  if (asking === undefined || !Array.isArray(nutrient)) return nutrient;
  const asked = nutrient.filter((name) => asking.includes(SAID_AS[String(name)] ?? String(name)));
  const energy = nutrient.includes('energy') && /calor|kcal|energy/.test(asking) ? ['energy'] : [];
  const all = [...new Set([...energy, ...asked])];
  return all.length > 0 ? all : undefined;
}

/** How a nutrient's name starts when people say it. */
const SAID_AS: Readonly<Record<string, string>> = { carbohydrate: 'carb', sugars: 'sugar' };

/** The list itself: behind the words that ask for it, else from its first amount on. */
function listIn(text: string): string | undefined {
  const asking = ASKING.exec(text);
  if (asking && FIRST_AMOUNT.test(text)) return text.slice(asking[0].length);
  const start = text.search(FIRST_AMOUNT);
  return start < 0 ? undefined : text.slice(start);
}
