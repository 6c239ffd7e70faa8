import { LINE_TOLERANCE, measureBy } from '../../../nutrition/measure/kitchen-measure.ts';
import { massOf } from '../../../nutrition/portion/mass-of.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { batchSize } from '../../../nutrition/scale/batch-size.ts';
import { recipeTable } from '../../../nutrition/scale/recipe-table.ts';
import { rescueOveradded } from '../../../nutrition/scale/rescue.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { slotNumber, slotText } from '../../slot-number.ts';
import { batchText, factorText, gramsText, piecesText, weightText } from './batch-words.ts';
import { foodInRecipe } from './line-meant.ts';
import { adviceFor } from './rescue-advice.ts';
import { targetOf } from './target-of.ts';

/** What to do with a mix that went wrong, now, at the bench. `batch` is what the conversation is making. */
export function rescueAnswer(asked: Asked, problem: string, recipe: Recipe | undefined): Answer {
  const words = slotText(asked.slots, 'ingredient');
  const food = recipe && words ? foodInRecipe(recipe, asked.kitchen.book.foods, words) : undefined;
  if (problem === 'overadded' && recipe && food) return overadded(asked, recipe, food.id);
  if (problem === 'forgot' && recipe && food) return forgotten(asked, recipe, food.id);
  return adviceFor(problem, recipe, asked.kitchen.book.foods, words);
}

function overadded(asked: Asked, recipe: Recipe, foodId: string): Answer {
  const { foods } = asked.kitchen.book;
  const made = madeFactor(asked, recipe);
  const over = overFactor(asked, recipe, foodId, made);
  const rescue = rescueOveradded(recipe, foods, foodId, over, made);
  const name = foods.get(foodId)?.name ?? foodId;
  const pieces = piecesText(rescue.pieces, recipe.pieceUnit);
  const bowls = recipe.bowlG ? Math.ceil(rescue.rawG / (recipe.bowlG * 1.02)) : 1;
  return {
    title: `Add the rest to match: ${name} went in x ${factorText(over)}, so make ${pieces}`,
    sections: [
      {
        kind: 'table',
        heading: `Add to what is in the bowl (no more ${name})`,
        columns: [
          { name: 'Ingredient', align: 'left' },
          { name: 'Add', align: 'left' },
          { name: 'Grams', align: 'right' },
        ],
        rows: rescue.additions.map(({ food, measure }) => [
          food.name,
          measure.text,
          gramsText(measure.exactG),
        ]),
      },
      {
        kind: 'list',
        items: [
          `Then it is ${weightText(rescue.rawG)} of mix${bowls > 1 ? `: ${bowls} bowls` : ''}.`,
          `Counted from ${batchText(recipe.yieldPieces * made, recipe.pieceUnit, recipe.title)} with everything else already in.`,
          ...(asked.slots.amount !== undefined && asked.slots.factor === undefined
            ? [`Taken that x ${factorText(over)} of what was meant went in; say so if it was otherwise.`]
            : []),
          'If it is not mixed in yet, lift out what you can instead.',
        ],
      },
    ],
    cautions: [],
    next: [{ label: `${rescue.pieces} ${recipe.title}`, says: `${rescue.pieces} ${recipe.title}` }],
    audience: 'channel',
    data: {
      problem: 'overadded',
      recipe: recipe.id,
      ingredient: foodId,
      factor: over,
      pieces: rescue.pieces,
      add: rescue.additions.map(({ food, measure }) => ({
        food: food.id,
        measure: measure.text,
        exactG: Math.round(measure.exactG * 100) / 100,
      })),
    },
  };
}

function forgotten(asked: Asked, recipe: Recipe, foodId: string): Answer {
  const { foods } = asked.kitchen.book;
  const made = madeFactor(asked, recipe);
  const entry = recipeTable(recipe, foods).lines.find(({ line }) => line.foodId === foodId);
  const measure = entry && measureBy(entry.ways, entry.line.massG * made, LINE_TOLERANCE);
  const amount =
    measure && entry ? `${measure.text} ${entry.food.name} (${gramsText(measure.exactG)} g)` : '';
  const baked = recipe.moistureLoss > 0;
  return {
    title: `Work in ${amount} now, if it is not ${baked ? 'baked' : 'set'} yet`,
    sections: [
      {
        kind: 'list',
        items: [
          `For ${batchText(recipe.yieldPieces * made, recipe.pieceUnit, recipe.title)}.`,
          entry?.line.role === 'leavening' || entry?.line.role === 'flavor'
            ? 'Stir it into a spoonful of the liquid first, so that it spreads.'
            : 'Break the mix up, work it in, press again.',
          `Already ${baked ? 'baked' : 'cut'}? Then say so on the label and tell the dietitian: the figures and allergens on file no longer fit.`,
        ],
      },
    ],
    cautions: [],
    next: [],
    audience: 'channel',
    data: {
      problem: 'forgot',
      recipe: recipe.id,
      ingredient: foodId,
      exactG: measure?.exactG,
      measure: measure?.text,
    },
  };
}

/** The batch on the bench: said now, or the one this conversation scaled; else one recipe. */
function madeFactor(asked: Asked, recipe: Recipe): number {
  const { kitchen, slots, conversation } = asked;
  const made = conversation.batchPieces;
  if (typeof slots.quantity === 'number') {
    const wanted = targetOf(recipe, kitchen, { quantity: slots.quantity, unit: slots.unit });
    if (wanted)
      return batchSize(recipe, recipeTable(recipe, kitchen.book.foods), wanted.target, wanted.options).factor;
  }
  return typeof made === 'number' && conversation.recipeId === recipe.id ? made / recipe.yieldPieces : 1;
}

/** How many times too much: as said ("doubled"), or what went in over what was meant; twice when not said. */
function overFactor(asked: Asked, recipe: Recipe, foodId: string, made: number): number {
  const { slots, kitchen } = asked;
  const said = slotNumber(slots, 'factor');
  if (said !== undefined) return said;
  const amount = slotNumber(slots, 'amount');
  const unit = slotText(slots, 'amount_unit');
  const food = kitchen.book.foods.get(foodId);
  if (amount === undefined || unit === undefined || !food) return 2;
  const meantG =
    recipe.lines.reduce((sum, line) => (line.foodId === foodId ? sum + line.massG : sum), 0) * made;
  const wentInG = massOf(food, amount, unit).massG;
  // "put in 2 cups" is all of it; less than was meant can only be what came on top.
  return wentInG > meantG ? wentInG / meantG : 1 + wentInG / meantG;
}
