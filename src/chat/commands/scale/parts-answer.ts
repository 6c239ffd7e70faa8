import { scaleRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import type { Slots, SlotValue } from '../../slots.ts';
import { recipeMeant } from '../../which-recipe.ts';
import { allergenLine } from './allergen-line.ts';
import { dataOf } from './batch-answer.ts';
import { batchLines } from './batch-lines.ts';
import { batchText } from './batch-words.ts';
import { ingredientTable } from './ingredient-table.ts';
import { targetOf } from './target-of.ts';

const MOST_PARTS = 5;

/** "24 oat bars and 16 cherry bars": one batch after the other, each with its own table. */
export async function partsAnswer(asked: Asked, parts: readonly SlotValue[]): Promise<Answer> {
  const { kitchen, slots } = asked;
  const titles: string[] = [];
  const sections: Section[] = [];
  const data: Record<string, unknown>[] = [];
  for (const part of parts.slice(0, MOST_PARTS)) {
    const said = partSlots(part, slots);
    const recipe = await recipeMeant({ ...asked, slots: said });
    const wanted = recipe && targetOf(recipe, kitchen, said);
    if (!recipe || !wanted) continue;
    const scaled = scaleRecipe(recipe, kitchen.book.foods, wanted.target, wanted.options);
    titles.push(batchText(scaled.pieces, recipe.pieceUnit, recipe.title));
    sections.push({ kind: 'text', text: `${recipe.title}: ${allergenLine(recipe, kitchen.book)}` });
    sections.push(
      ingredientTable(scaled, typeof slots.output_unit === 'string' ? slots.output_unit : undefined),
    );
    sections.push({ kind: 'list', items: batchLines(scaled) });
    data.push(dataOf(scaled));
  }
  const left = parts.length - MOST_PARTS;
  if (left > 0)
    sections.push({ kind: 'text', text: `${left} more not shown: ask for at most ${MOST_PARTS} at once.` });
  return {
    title: titles.join(' + '),
    sections,
    cautions: ['Clean and change gloves between batches with different allergens.'],
    next: [],
    audience: 'channel',
    data: { parts: data },
  };
}

function partSlots(part: SlotValue, slots: Slots): Slots {
  const own = typeof part === 'object' && !Array.isArray(part) ? (part as Slots) : {};
  return { ...own, ...(slots.extra_pct === undefined ? {} : { extra_pct: slots.extra_pct }) };
}
