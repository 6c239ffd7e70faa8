import { type NewBatch, recordMade } from '../../../kitchen/stock/record-made.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answered, Asked } from '../../command.ts';
import { withUses } from '../../pantry/uses.ts';
import type { Slots } from '../../slots.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import { whenDone } from '../../stock/when.ts';
import { askWhichRecipe, recipeMeant } from '../../which-recipe.ts';
import { lotsSaid } from './lots.ts';
import { madeAnswer } from './made-answer.ts';
import { overrideSaid } from './override.ts';
import { asMade, isQuestion, type Question } from './variant.ts';

/** Logs one or several batches as one entry. */
export async function logMade(asked: Asked): Promise<Answered> {
  const parts = partsOf(asked);
  const batches: NewBatch[] = [];
  for (const part of parts) {
    const recipe = await recipeMeant(part);
    if (!recipe) return askWhichRecipe(asked, 'made', 'Which recipe was made? Not logged yet.');
    const pieces = piecesMade(part.slots, recipe);
    if (pieces === undefined) return askHowMany(asked, recipe);
    const variant = await asMade(part, recipe, parts.length === 1);
    if (isQuestion(variant)) return askVariant(asked, recipe, variant);
    batches.push({
      ...variant,
      pieces,
      lots: lotsSaid(part, variant.recipe),
      ...placeSaid(part.slots),
      ...overrideSaid(asked),
    });
  }
  const { made, again, uses } = await recordMade(deskOf(asked), {
    ...doingOf(asked, whenDone(asked, asked.slots.made)),
    batches,
  });
  const recipeIds = made.map(({ batch }) => batch.recipeId);
  return {
    answer: withUses(asked, madeAnswer(asked, made, again), uses),
    conversation: settled(asked, 'made', recipeIds),
  };
}

/** Each kind that was named, with what was said of all of them. */
function partsOf(asked: Asked): readonly Asked[] {
  const { items, ...rest } = asked.slots;
  if (!Array.isArray(items)) return [asked];
  return items.map((item: Slots) => ({
    ...asked,
    slots: { ...rest, unit: undefined, recipe: undefined, ...item },
  }));
}

const placeSaid = ({ location }: Slots): { location?: string } =>
  typeof location === 'string' ? { location } : {};

/** "40", or "2 batches" of what the card yields. */
function piecesMade({ quantity, factor }: Slots, recipe: Recipe): number | undefined {
  if (typeof quantity === 'number') return quantity;
  if (quantity !== undefined) {
    throw new Problem(
      'bad_quantity',
      `"${String(quantity)}" is not a count of pieces.`,
      'Write a number, like "made 40 oat bars".',
    );
  }
  return typeof factor === 'number' ? Math.round(factor * recipe.yieldPieces) : undefined;
}

function askHowMany(asked: Asked, recipe: Recipe): Answered {
  const reading = { intent: 'made', slots: { ...asked.slots, recipe: recipe.id } } as const;
  return {
    answer: {
      title: `How many ${recipe.title.toLowerCase()} came out? Not logged yet.`,
      sections: [],
      cautions: [],
      next: [],
      audience: 'asker',
      data: { asks: 'quantity', recipe: recipe.id },
    },
    conversation: {
      ...asked.conversation,
      recipeId: recipe.id,
      question: { slot: 'quantity', options: [], reading },
    },
  };
}

function askVariant(asked: Asked, recipe: Recipe, { title, slot, options, slots }: Question): Answered {
  const reading = { intent: 'made', slots: { ...asked.slots, recipe: recipe.id, ...slots } } as const;
  const names = options.map((id) => asked.kitchen.book.foods.get(id)?.name ?? id);
  return {
    answer: {
      title: `${title} Not logged yet.`,
      sections: names.length > 0 ? [{ kind: 'list', items: names }] : [],
      cautions: [],
      next: names.slice(0, 3).map((name) => ({ label: name, says: name })),
      audience: 'asker',
      data: { asks: slot, recipe: recipe.id, options },
    },
    conversation: { ...asked.conversation, recipeId: recipe.id, question: { slot, options, reading } },
  };
}
