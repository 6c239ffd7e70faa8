import { outlook } from '../../../kitchen/games/outlook.ts';
import { gameName } from '../../../kitchen/games/say-game.ts';
import { dateOf, sayDate } from '../../../kitchen/time/zone.ts';
import { type Cost, recipeCost } from '../../../nutrition/cost/cost.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answered, Asked } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { spanOf } from '../../games/span.ts';
import { atLeast, namesOf, unpricedLine } from '../../money.ts';
import { piecesOf } from '../../stock/words.ts';

interface GameCost {
  readonly name: string;
  readonly date: string;
  readonly recipe: Recipe;
  readonly pieces: number;
  readonly cost: Cost;
}

/** What the games of a day, or of the next seven days, cost: the pieces each one gets, at the price of making them. */
export async function gamesCost(asked: Asked): Promise<Answered> {
  const { book } = asked.kitchen;
  const span = spanOf(asked);
  const { plans, games } = await outlook({ ...gamesDesk(asked), book });
  const byId = new Map(games.map((game) => [game.id, game]));
  const costs = plans.flatMap(({ recipeId, packs }) =>
    packs.flatMap(({ gameId, pieces, packAtMs }): GameCost[] => {
      const game = byId.get(gameId);
      const recipe = book.recipes.get(recipeId ?? '');
      if (!game || !recipe || pieces === 0 || game.date < span.from || game.date > span.to) return [];
      const date = game.date ?? dateOf(packAtMs, book.settings.timeZone);
      return [{ name: gameName(game), date, recipe, pieces, cost: recipeCost(recipe, book.foods, pieces) }];
    }),
  );
  if (costs.length === 0) {
    throw new Problem(
      'not_found',
      `No game with food planned is known for ${span.name}.`,
      'Name a recipe and a count, like "cost of 44 oat bars", or add the game: "game Sat 2pm vs Riverton 44 people".',
    );
  }
  const unpriced = [
    ...new Map(costs.flatMap(({ cost }) => cost.unpriced.map((food) => [food.id, food]))).values(),
  ];
  const cents = Math.round(costs.reduce((sum, { cost }) => sum + cost.exactCents, 0));
  const missing = unpricedLine(namesOf(unpriced));
  return {
    answer: {
      title: `${atLeast(cents, unpriced)} for ${costs.length === 1 ? costs[0]?.name : `${costs.length} games`}, ${span.name}.`,
      sections: [
        {
          kind: 'list',
          items: costs.map(
            ({ name, date, recipe, pieces, cost }) =>
              `${sayDate(date as typeof span.from)} ${name}: ${piecesOf(pieces, { recipeTitle: recipe.title, pieceUnit: recipe.pieceUnit })}, ${atLeast(cost.cents, cost.unpriced)}`,
          ),
        },
        ...(missing === undefined ? [] : [{ kind: 'text' as const, text: missing }]),
        {
          kind: 'text',
          text: 'Spares are in it; ingredients only, stock on hand counted at what it costs to make.',
        },
      ],
      cautions: [],
      next: ['shopping list'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        cents,
        isLowerBound: unpriced.length > 0,
        games: costs.map(({ name, date, recipe, pieces, cost }) => ({
          name,
          date,
          recipe: recipe.id,
          pieces,
          cents: cost.cents,
        })),
      },
    },
  };
}
