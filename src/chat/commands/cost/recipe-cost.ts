import { type Cost, recipeCost } from '../../../nutrition/cost/cost.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { MOST_PIECES } from '../../../nutrition/scale/target.ts';
import type { Answer } from '../../answer.ts';
import { cardMeant, saidFirst } from '../../card-meant.ts';
import type { Answered, Asked } from '../../command.ts';
import { foodCalled } from '../../find-food.ts';
import { atLeast, dollars, namesOf, unpricedLine } from '../../money.ts';
import { needsOf } from '../../need-words.ts';
import { pantryWords } from '../../pantry/amount.ts';
import { slotNumber } from '../../slot-number.ts';
import { counted, piecesOf } from '../../stock/words.ts';

/** "40 oat bars cost $14.12, 35 cents each": a batch by its ingredients, dearest first. */
export function recipeCostAnswer(asked: Asked, recipe: Recipe): Answered {
  const { book } = asked.kitchen;
  const pieces = piecesMeant(asked, recipe);
  const needs = needsOf(asked.slots.avoid);
  const meant = cardMeant(book, recipe, needs);
  const cost = recipeCost(meant.card, book.foods, pieces);
  const answer = answerOf(asked, recipe, pieces, cost);
  return {
    answer: saidFirst(answer, needs, [...asNote(meant.note), ...notOnCard(asked, recipe)], meant.offer),
    conversation: {
      ...asked.conversation,
      recipeId: recipe.id,
      last: { intent: 'cost', slots: { ...asked.slots, recipe: recipe.id } },
    },
  };
}

const asNote = (note: string | undefined): string[] => (note === undefined ? [] : [note]);

/** A food that was said to be in it and is not on the card: the price is the card's, and that is said. */
function notOnCard({ slots, kitchen: { book } }: Asked, recipe: Recipe): string[] {
  if (slots.made_with === undefined) return [];
  const food = foodCalled(book, String(slots.made_with));
  if (food && recipe.lines.some((line) => line.foodId === food.id)) return [];
  const name = food?.name ?? String(slots.made_with);
  return [`Priced as on the card: ${name} is not on it, so it is NOT in this price.`];
}

/** Pieces asked about: a count, batches, people by the kitchen's share, else one yield of the card. */
export function piecesMeant(asked: Asked, recipe: Recipe): number {
  const { slots, kitchen } = asked;
  const quantity = slotNumber(slots, 'quantity');
  const factor = slotNumber(slots, 'factor');
  const each = slots.unit === 'person' ? kitchen.book.settings.piecesPerPerson : 1;
  const pieces = quantity === undefined ? (factor ?? 1) * recipe.yieldPieces : Math.ceil(quantity * each);
  if (pieces > 0 && pieces <= MOST_PIECES) return pieces;
  throw new Problem(
    'bad_quantity',
    pieces > MOST_PIECES ? 'No kitchen makes that many at once.' : 'That is not a count of pieces.',
    'Write a whole number above zero, like "cost of 40 oat bars".',
  );
}

function answerOf(asked: Asked, recipe: Recipe, pieces: number, cost: Cost): Answer {
  const { settings } = asked.kitchen.book;
  const missing = unpricedLine(namesOf(cost.unpriced));
  const each = cost.exactCents / pieces;
  const person = each * settings.piecesPerPerson;
  const what = piecesOf(pieces, { recipeTitle: recipe.title, pieceUnit: recipe.pieceUnit });
  const batch = atLeast(cost.cents, cost.unpriced);
  const one = atLeast(each, cost.unpriced);
  const title =
    asked.slots.per === 'person'
      ? `${atLeast(person, cost.unpriced)} a person (${counted(settings.piecesPerPerson, recipe.pieceUnit)} each) of ${recipe.title.toLowerCase()}.`
      : isPerPiece(asked, recipe)
        ? `${one} a ${recipe.pieceUnit} of ${recipe.title.toLowerCase()}: ${what} cost ${batch}.`
        : `${what} cost ${batch}, ${one} a ${recipe.pieceUnit}.`;
  const dearest = [...cost.lines].sort((a, b) => (b.cents ?? -1) - (a.cents ?? -1));
  return {
    title,
    sections: [
      {
        kind: 'table',
        columns: [
          { name: 'Ingredient', align: 'left' },
          { name: 'Amount', align: 'right' },
          { name: 'Cost', align: 'right' },
        ],
        rows: dearest.map(({ food, massG, cents }) => [
          food.name,
          pantryWords(massG),
          cents === undefined ? 'no price' : dollars(cents),
        ]),
      },
      ...(missing === undefined ? [] : [{ kind: 'text' as const, text: missing }]),
      { kind: 'text', text: 'Ingredients only, by the price of their packages: no labor, no spares.' },
    ],
    cautions: [],
    next: [`shop for ${pieces} ${recipe.title.toLowerCase()}`].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: {
      recipe: recipe.id,
      pieces,
      batchCents: cost.cents,
      pieceCents: Math.round(each),
      isLowerBound: cost.unpriced.length > 0,
      unpriced: cost.unpriced.map(({ id }) => id),
      lines: cost.lines.map(({ food, massG, cents }) => ({
        food: food.id,
        massG: Math.round(massG * 10) / 10,
        cents: cents ?? null,
      })),
    },
  };
}

const isPerPiece = ({ slots }: Asked, recipe: Recipe): boolean =>
  slots.per === recipe.pieceUnit || slots.per === 'piece';
