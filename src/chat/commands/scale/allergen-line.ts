import type { Need } from '../../../nutrition/allergens.ts';
import { allergensOf } from '../../../nutrition/allergens-of.ts';
import type { Book } from '../../../nutrition/book.ts';
import { judge } from '../../../nutrition/conflict.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { allergenName, listed, needName } from '../../need-words.ts';

const lines = new WeakMap<Recipe, { readonly book: Book; readonly text: string }>();

/** "Contains milk, peanut." first thing, worked out once per recipe. Cross-contact is never known here. */
export function allergenLine(recipe: Recipe, book: Book): string {
  const ready = lines.get(recipe);
  if (ready?.book === book) return ready.text;
  const report = allergensOf(foodsOf(recipe, book), book.settings.allergenList);
  const named = (status: string) =>
    report.findings.filter((f) => f.status === status).map((f) => allergenName(f.allergen));
  const contains = named('contains');
  const advisory = named('advisory');
  const unread = named('not_known');
  const text = [
    contains.length > 0 ? `CONTAINS ${listed(contains)}.` : 'No major allergen listed on its ingredients.',
    advisory.length > 0 ? `May contain ${listed(advisory)}.` : '',
    unreadText(unread),
    'Cross-contact: not checked.',
  ]
    .filter(Boolean)
    .join(' ');
  lines.set(recipe, { book, text });
  return text;
}

/** A long list of what is not known says less than that the labels have to be read. */
function unreadText(unread: readonly string[]): string {
  if (unread.length === 0) return '';
  return unread.length > 3
    ? 'Other allergens: not known until the labels are read.'
    : `Not known until labels are read: ${listed(unread)}.`;
}

/** What stands against each need that was asked for; undefined when nothing was asked. */
export function needLine(recipe: Recipe, book: Book, needs: readonly Need[]): string | undefined {
  if (needs.length === 0) return undefined;
  const asked = listed(needs.map(needName));
  const foods = foodsOf(recipe, book);
  const judged = (...verdicts: readonly string[]) =>
    foods
      .filter((food) => needs.some((need) => verdicts.includes(judge(food, need).verdict)))
      .map((f) => f.name);
  const against = judged('conflict', 'advisory');
  if (against.length > 0) return `NOT free of ${asked} as written: ${listed(against)}. Swap first.`;
  const unread = judged('ask');
  if (unread.length > 0)
    return `Not known whether it is free of ${asked}: read the label of ${listed(unread)} first.`;
  return `No ${asked} in its ingredients or label statements as known here; read the packages in use.`;
}

const foodsOf = (recipe: Recipe, book: Book) =>
  recipe.lines.flatMap((line) => book.foods.get(line.foodId) ?? []);
