import { outlook } from '../../../kitchen/games/outlook.ts';
import type { PrepPlan } from '../../../kitchen/games/prep-plan.ts';
import { gameName } from '../../../kitchen/games/say-game.ts';
import { dateOf, sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Asked } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { amountWords } from '../../games/plan-lines.ts';
import { type Span, spanOf } from '../../games/span.ts';
import { todayOf } from '../../games/when.ts';
import { fits } from '../../games/which-game.ts';
import { batchOf, type Trip } from './batches.ts';

/** What is made for the games of a day or a span, by the plan their reminders go by: stock is taken off already. */
export async function gamesTrip(asked: Asked): Promise<Trip> {
  const trip = await tripIn(asked, spanAsked(asked));
  if (trip) return trip;
  const { opponent } = asked.slots;
  const whom = typeof opponent === 'string' ? ` vs ${opponent}` : '';
  throw new Problem(
    'not_found',
    `No game${whom} with food planned is known for ${spanAsked(asked).name}.`,
    'Name a recipe and a count, like "shop for 44 oat bars", or add the game: "game Sat 2pm vs Riverton 44 people".',
  );
}

/** The games of the next seven days; `undefined` when none is known. */
export const weekTrip = (asked: Asked): Promise<Trip | undefined> =>
  tripIn(asked, spanOf({ ...asked, slots: {} }));

/** A game named by whom it is against may be any time ahead. */
function spanAsked(asked: Asked): Span {
  const { when, opponent, sport } = asked.slots;
  const isAnyTime = when === undefined && (opponent !== undefined || sport !== undefined);
  return isAnyTime
    ? { ...spanOf({ ...asked, slots: { when: '31 days' } }), name: 'the next month' }
    : spanOf(asked);
}

async function tripIn(asked: Asked, span: Span): Promise<Trip | undefined> {
  const { book } = asked.kitchen;
  const { plans, games } = await outlook({ ...gamesDesk(asked), book });
  const meant = new Map(
    games
      .filter((game) => game.date >= span.from && game.date <= span.to && fits(asked, game))
      .map((game) => [game.id, game]),
  );
  const found = plans.filter(({ gameIds }) => gameIds.some((id) => meant.has(id)));
  if (found.length === 0) return undefined;
  const named = (plan: PrepPlan) =>
    plan.gameIds
      .flatMap((id) => games.find((game) => game.id === id) ?? [])
      .map((game) => `${sayDate(game.date)} ${gameName(game)}`)
      .join(' and ');
  const made = found.filter(({ pieces }) => pieces > 0);
  const dates = made.map(({ prepAtMs }) => dateOf(prepAtMs, book.settings.timeZone));
  return {
    batches: made.flatMap(({ recipeId, pieces }) => {
      const recipe = book.recipes.get(recipeId ?? '');
      return recipe ? [batchOf(asked, recipe, { quantity: pieces, unit: recipe.pieceUnit })] : [];
    }),
    name: meant.size === 1 ? [...meant.values()].map(gameLine).join('') : `${meant.size} games, ${span.name}`,
    lines: found.map((plan) => `${named(plan)}: ${amountWords(plan, book)}`),
    notes: [
      ...found.flatMap(({ conflicts }) => conflicts),
      'Spares and whole slabs are in it, made pieces in stock are taken off, as the plan of each game says.',
    ],
    date: [todayOf(asked), ...dates].sort().at(-1) ?? todayOf(asked),
  };
}

const gameLine = (game: Parameters<typeof gameName>[0] & { readonly date: Span['from'] }): string =>
  `${sayDate(game.date)}, ${gameName(game)}`;
