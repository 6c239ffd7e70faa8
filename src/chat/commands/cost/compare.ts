import type { Book } from '../../../nutrition/book.ts';
import { recipeCost } from '../../../nutrition/cost/cost.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { findersOf } from '../../finders.ts';
import { atLeast, dollars, namesOf, unpricedLine } from '../../money.ts';
import { unknownRecipe } from '../../unknown-recipe.ts';

/** One of the things compared; `cents` not rounded, absent when nothing about it is known. */
interface Compared {
  readonly name: string;
  readonly id: string;
  readonly per: string;
  readonly cents: number;
  readonly unpriced: readonly string[];
}

const MOST = 6;

/** Two or more recipes per piece, or foods per 100 g, cheapest first. */
export async function compareAnswer(asked: Asked): Promise<Answered> {
  const said = (asked.slots.compare as readonly unknown[]).map(String).slice(0, MOST);
  const { book } = asked.kitchen;
  const things: Compared[] = [];
  for (const words of said) things.push(await comparedOf(book, words));
  if (new Set(things.map(({ per }) => per === '100 g')).size > 1) {
    throw new Problem(
      'not_possible',
      'A recipe is priced by the piece and a food by weight: I cannot compare the two.',
      'Compare recipes with recipes, like "which is cheaper, oat bars or cherry oat bars".',
    );
  }
  const ordered = [...things].sort((a, b) => a.cents - b.cents);
  const [first, second] = ordered;
  if (!first || !second) {
    throw new Problem('needs_more', 'Compare with what?', 'Name two, like "oat bars or date bars".');
  }
  const isSure = ordered.every(({ unpriced }) => unpriced.length === 0);
  const difference = dollars(second.cents - first.cents);
  const missing = unpricedLine([...new Set(ordered.flatMap(({ unpriced }) => unpriced))]);
  return {
    answer: {
      title: isSure
        ? `${first.name}: ${dollars(first.cents)} a ${first.per}, ${difference} less than ${second.name.toLowerCase()} (${dollars(second.cents)}).`
        : `Not sure yet: ${ordered.map((each) => `${each.name.toLowerCase()} ${atLeast(each.cents, each.unpriced)} a ${each.per}`).join(', ')}.`,
      sections: [
        {
          kind: 'table',
          columns: [
            { name: '', align: 'left' },
            { name: 'Cost', align: 'right' },
            { name: 'Per', align: 'right' },
          ],
          rows: ordered.map((each) => [each.name, atLeast(each.cents, each.unpriced), each.per]),
        },
        ...(missing === undefined ? [] : [{ kind: 'text' as const, text: missing }]),
      ],
      cautions: [],
      next: [],
      audience: 'channel',
      data: {
        compared: ordered.map(({ id, per, cents, unpriced }) => ({
          id,
          per,
          cents: Math.round(cents),
          isLowerBound: unpriced.length > 0,
        })),
      },
    },
  };
}

async function comparedOf(book: Book, words: string): Promise<Compared> {
  const match = findersOf(book).recipes.find(words);
  const recipe = book.recipes.get(words) ?? (match.kind === 'found' ? match.recipe : undefined);
  if (recipe) {
    const cost = recipeCost(recipe, book.foods, 1);
    return {
      name: recipe.title,
      id: recipe.id,
      per: recipe.pieceUnit,
      cents: cost.exactCents,
      unpriced: namesOf(cost.unpriced),
    };
  }
  if (match.kind !== 'unknown') throw await unknownRecipe(book, words);
  const food = findFood(book, words);
  const price = food.price;
  return {
    name: food.name,
    id: food.id,
    per: '100 g',
    cents: price ? (price.priceCents / price.packageG) * 100 : 0,
    unpriced: price ? [] : [food.name],
  };
}
