import type { Book } from '../../../nutrition/book.ts';
import type { ScaledLine, ScaledRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { Answer, NextStep, Section } from '../../answer.ts';
import { needsOf } from '../../need-words.ts';
import { rawCautions } from '../../raw-caution.ts';
import { slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { allergenLine, needLine } from './allergen-line.ts';
import { batchLines, countNotes, roundingLine } from './batch-lines.ts';
import { batchText, gramsText, piecesText, weightText } from './batch-words.ts';
import { ingredientTable } from './ingredient-table.ts';
import { foodInRecipe } from './line-meant.ts';
import { available, limits } from './target-of.ts';

/** The bench answer: allergens, what to take, how to mix, pan, cut and set, what was rounded. */
export function batchAnswer(scaled: ScaledRecipe, book: Book, slots: Slots): Answer {
  const { recipe } = scaled;
  const outputUnit = slotText(slots, 'output_unit');
  const needs = needsOf(slots.avoid);
  const need = needLine(recipe, book, needs);
  const weighed = outputUnit === 'g' || outputUnit === 'kg';
  return {
    title: titleOf(scaled, book, slots),
    sections: [
      ...(need ? [{ kind: 'text', text: need } as const] : []),
      { kind: 'text', text: allergenLine(recipe, book) },
      ingredientTable(scaled, outputUnit),
      ...wholeCount(scaled, slots),
      ...assumedPackage(scaled, book, slots),
      { kind: 'list', items: batchLines(scaled) },
      {
        kind: 'text',
        text: weighed ? 'Weighed: grams are exact, nothing is rounded to a measure.' : roundingLine(scaled),
      },
    ],
    cautions: [
      ...rawCautions(recipe, book),
      ...(weighed ? [] : countNotes(scaled)),
      ...(recipe.note ? [recipe.note] : []),
    ],
    next: nextSteps(scaled, weighed),
    audience: needs.length > 0 ? 'asker' : 'channel',
    data: dataOf(scaled),
  };
}

/** Pieces are whole: of "40.5 bars" it is said how many are made. */
function wholeCount({ pieces, recipe }: ScaledRecipe, slots: Slots): Section[] {
  const said = slots.quantity;
  if (typeof said !== 'number' || Number.isInteger(said) || slots.factor !== undefined) return [];
  return [
    { kind: 'text', text: `You wrote ${said}: rounded up to ${piecesText(pieces, recipe.pieceUnit)}.` },
  ];
}

/** The size a jar was taken as, when the batch goes by what is left of one. */
function assumedPackage({ recipe }: ScaledRecipe, book: Book, slots: Slots): Section[] {
  const food = limits(slots)
    ? foodInRecipe(recipe, book.foods, slotText(slots, 'ingredient') ?? '')
    : undefined;
  const assumed = food && available(food, slots).assumed;
  return assumed ? [{ kind: 'text', text: assumed }] : [];
}

/** The number first; when one ingredient was asked about, its amount. */
function titleOf(scaled: ScaledRecipe, book: Book, slots: Slots): string {
  const { recipe, pieces, pieceG, rawG } = scaled;
  const batch = batchText(pieces, recipe.pieceUnit, recipe.title);
  const words = slots.amount === undefined ? slotText(slots, 'ingredient') : undefined;
  const food = words === undefined ? undefined : foodInRecipe(recipe, book.foods, words);
  const line = food && scaled.lines.find((each) => each.foodId === food.id);
  if (line)
    return `${line.measure.text} ${line.food.name} (${gramsText(line.measure.exactG)} g) for ${batch}`;
  return `${batch}: ${weightText(rawG)} of mix, ${gramsText(pieceG)} g each`;
}

function nextSteps(scaled: ScaledRecipe, weighed: boolean): NextStep[] {
  const { recipe, pieces } = scaled;
  const title = recipe.title.toLowerCase();
  const cut = Math.max(2, Math.round(recipe.yieldPieces / 2));
  // Whole sentences: in a channel somebody else may press, who was not in the conversation.
  return [
    ...(weighed ? [] : [{ label: 'In grams', says: `${pieces} ${title} in grams` }]),
    ...(recipe.pan ? [{ label: `Cut into ${cut}`, says: `cut ${title} into ${cut}` }] : []),
    { label: 'Nut-free version', says: `nut-free version of ${title}` },
    { label: 'Swap something', says: `swap in ${title}` },
    { label: 'Log this batch', says: `made ${pieces} ${title}` },
  ];
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

export function dataOf(scaled: ScaledRecipe): Record<string, unknown> {
  const { recipe, slabs, mixes, proteinDeviation, ingredientLeftG } = scaled;
  return {
    recipe: recipe.id,
    version: recipe.version,
    factor: Math.round(scaled.factor * 1e6) / 1e6,
    pieces: scaled.pieces,
    pieceG: hundredth(scaled.pieceG),
    exactPieceG: hundredth(scaled.exactPieceG),
    mixG: hundredth(scaled.rawG),
    lines: scaled.lines.map(lineData),
    mixes: { count: mixes.count, eachG: hundredth(mixes.eachG) },
    ...(proteinDeviation === undefined ? {} : { proteinDeviation: Math.round(proteinDeviation * 1e4) / 1e4 }),
    ...(slabs ? { pans: slabs.pans, sparePlaces: slabs.sparePlaces, slabs: slabs.slabs.map(slabData) } : {}),
    ...(recipe.set ? { setLeastMin: recipe.set.leastMin, setBetterMin: recipe.set.betterMin } : {}),
    ...(ingredientLeftG === undefined ? {} : { ingredientLeftG: hundredth(ingredientLeftG) }),
  };
}

const lineData = ({ foodId, food, measure, eachMix }: ScaledLine) => ({
  food: foodId,
  name: food.name,
  measure: measure.text,
  exactG: hundredth(measure.exactG),
  measuredG: hundredth(measure.massG),
  ...(eachMix ? { eachMix: eachMix.text, eachMixG: hundredth(eachMix.massG) } : {}),
});

const slabData = ({
  pan,
  count,
  filled,
  pieces,
  cut,
}: NonNullable<ScaledRecipe['slabs']>['slabs'][number]) => ({
  pan: pan.id,
  count,
  filled: hundredth(filled),
  pieces,
  rows: cut.rows,
  columns: cut.columns,
  pieceLengthIn: hundredth(cut.pieceLengthIn),
  pieceWidthIn: hundredth(cut.pieceWidthIn),
});
