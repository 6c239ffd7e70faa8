import type { Recipe } from '../../nutrition/recipe.ts';
import { prepDay } from '../games/prep/prep-day.ts';
import { unapprovedIn } from '../stock/unapproved.ts';
import type { ProductionQuestion } from './question.ts';

/**
 * Cards a plan may choose from: what the dietitian approved in all its products or what was asked for by name, and of
 * these what can be made, set and still be in date; all of them where none can, so that the plan says what is wrong.
 */
export function cardsToPlan(question: ProductionQuestion): Recipe[] {
  const { book, recipeId } = question;
  const cards = [...book.recipes.values()].filter(
    (card) => card.id === recipeId || unapprovedIn(book, card).length === 0,
  );
  const inTime = cards.filter((card) => isInTime(card, question));
  return inTime.length > 0 ? inTime : cards;
}

function isInTime(card: Recipe, { book, date, packAtMs, nowMs }: ProductionQuestion): boolean {
  const { useBy, latestStartMs } = prepDay(card, date, packAtMs, book.settings);
  return latestStartMs > nowMs && (useBy === undefined || useBy >= date);
}

/** Whether a variant brings no product in that nobody approved: its card may hold one that was asked for by name. */
export function bringsOnlyApproved(
  { book }: Pick<ProductionQuestion, 'book'>,
  card: Recipe,
  recipe: Recipe,
): boolean {
  const before = new Set(unapprovedIn(book, card));
  return unapprovedIn(book, recipe).every((food) => before.has(food));
}

/** What will keep the log from taking what was made, and what to do before. */
export function reservations(
  { book, openLabels }: Pick<ProductionQuestion, 'book' | 'openLabels'>,
  recipe: Recipe,
): string[] {
  const unapproved = unapprovedIn(book, recipe).map(({ name }) => name);
  const unread = [...new Set(recipe.lines.map(({ foodId }) => foodId))]
    .filter((id) => openLabels.has(id))
    .map((id) => book.foods.get(id)?.name ?? id);
  return [
    ...(unapproved.length > 0
      ? [`${recipe.title}: ${unapproved.join(' and ')} not approved by the dietitian; ask before making it.`]
      : []),
    ...(unread.length > 0
      ? [
          `${recipe.title}: the label of ${unread.join(' and ')} changed; staff read it before making it, the log takes no batch until then.`,
        ]
      : []),
  ];
}
