import type { Limit } from '../../../nutrition/balance/question.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { perPiece, recipeTotals } from '../../../nutrition/recipe-totals.ts';
import { cutGrid } from '../../../nutrition/scale/cut-grid.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { seesEnergy, whereEnergyIs } from '../../quiet-numbers.ts';
import { nutrientName } from '../macros/figure-words.ts';
import { pluralOf } from '../scale/batch-words.ts';
import { isEnergy, valueWords } from './limit-words.ts';

/**
 * "300 kcal, how many pieces": the recipe unchanged, cut so that each piece holds at least (or at most) so much of
 * one nutrient, with its neighbors.
 */
export function howManyAnswer(asked: Asked, recipe: Recipe, limit: Limit): Answer {
  const { book } = asked.kitchen;
  const { measure } = limit;
  if (measure.kind !== 'nutrient')
    throw new Problem(
      'bad_option',
      'Pieces are counted by one nutrient.',
      'Write it like "25 g protein, how many pieces".',
    );
  if (isEnergy(measure) && !seesEnergy(asked.request, book.settings)) return notShown(asked, recipe);
  const whole = recipeTotals(recipe, book.foods);
  const { value, atLeast } = whole.served.of(measure.key);
  const wanted = said(asked, limit);
  const pieces = value === undefined || !(limit.amount > 0) ? 0 : countOf(value / limit.amount, wanted);
  if (value === undefined || pieces < 1 || pieces > 1000 || (atLeast && wanted === 'most')) {
    throw new Problem(
      'not_possible',
      `One batch of ${recipe.title} holds ${value === undefined ? `an unknown amount of ${nutrientName(measure.key)}` : valueWords(value, measure)}.`,
      'Ask for an amount a piece of it can hold, or for a bigger batch.',
    );
  }
  const { pieceUnit } = recipe;
  const each = (count: number) => valueWords(value / count, measure);
  const near = [...new Set([pieces, pieces + (wanted === 'least' ? 1 : -1), recipe.yieldPieces])];
  const grid = recipe.pan ? cutGrid(pieces, recipe.pan.lengthIn, recipe.pan.widthIn) : undefined;
  const cut = grid && grid.spare === 0 ? `, cut ${grid.rows} x ${grid.columns}` : '';
  return {
    title: `${pieces} ${pluralOf(pieceUnit, pieces)} from one batch of ${recipe.title}${cut}: ${each(pieces)} each.`,
    sections: [
      {
        kind: 'list',
        heading: 'Same batch, other cuts',
        items: near
          .filter((count) => count > 0)
          .map((count) => {
            const mass = Math.round(perPiece(whole, count).pieceMassG);
            const usual = count === recipe.yieldPieces ? ' (as the recipe is cut)' : '';
            return `${count} ${pluralOf(pieceUnit, count)}: ${each(count)}, ${mass} g each${usual}`;
          }),
      },
    ],
    cautions: [],
    next: [`macros ${recipe.title} cut into ${pieces}`].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { recipe: recipe.id, pieces, each: value / pieces, nutrient: nutrientName(measure.key) },
  };
}

/** Nobody who asks for 300 kcal bars means the bound people usually mean for calories: each is to hold that much. */
const said = (asked: Asked, limit: Limit): 'least' | 'most' => {
  const [first] = Array.isArray(asked.slots.target) ? asked.slots.target : [];
  const bound = typeof first === 'object' && first !== null && 'bound' in first ? first.bound : undefined;
  return bound === 'most' ? 'most' : bound === 'least' || isEnergy(limit.measure) ? 'least' : limit.bound;
};

const countOf = (count: number, wanted: 'least' | 'most'): number =>
  wanted === 'least' ? Math.floor(count + 1e-9) : Math.ceil(count - 1e-9);

function notShown(asked: Asked, recipe: Recipe): Answer {
  const [elsewhere = 'Calories are not shown here.'] = whereEnergyIs(
    asked.request,
    asked.kitchen.book.settings,
  );
  const says = `25 g protein ${pluralOf(recipe.pieceUnit, 2)}, how many pieces`;
  return {
    title: elsewhere,
    sections: [],
    cautions: [],
    next: [{ label: says, says }],
    audience: 'asker',
    data: { shown: false },
  };
}
