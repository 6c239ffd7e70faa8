import type { ScaledRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { Slab } from '../../../nutrition/scale/slabs.ts';
import {
  factorText,
  gramsText,
  inchesText,
  minutesText,
  piecesText,
  signedPercent,
  weightText,
} from './batch-words.ts';

/** How to mix, pan, cut and set the batch, in the order of the work. */
export function batchLines(scaled: ScaledRecipe): string[] {
  const { recipe, mixes, slabs } = scaled;
  return [
    mixLine(scaled),
    ...(slabs ? slabs.slabs.map((slab) => slabLine(scaled, slab)) : []),
    ...spareLine(scaled),
    ...largerLine(scaled),
    ...(recipe.set
      ? [`Set: at least ${minutesText(recipe.set.leastMin)}, ${minutesText(recipe.set.betterMin)} is better.`]
      : []),
    ...(recipe.moistureLoss > 0
      ? ['Oven: same temperature; time by look and thermometer, pans side by side take longer.']
      : []),
    ...leftLine(scaled),
    ...(mixes.count > 1 ? [`The bowl takes ${weightText(recipe.bowlG ?? 0)}.`] : []),
  ];
}

function mixLine({ factor, rawG, pieceG, mixes, recipe }: ScaledRecipe): string {
  const piece = `${gramsText(pieceG)} g a ${recipe.pieceUnit}`;
  const mix =
    mixes.count === 1
      ? `Mix: 1, ${weightText(rawG)}`
      : `Mix: ${mixes.count} equal, ${weightText(mixes.eachG)} each`;
  return `${mix}; ${piece}. Recipe x ${factorText(factor)}.`;
}

/** Less of a pan than this is shaped by hand. Common practice, no source. */
const LEAST_FILLED = 0.15;

function slabLine(
  { recipe }: ScaledRecipe,
  { pan, count, filled, pressedLengthIn, pieces, cut }: Slab,
): string {
  if (filled < LEAST_FILLED) {
    const how = recipe.moistureLoss > 0 ? 'bake in a small dish' : 'shape by hand';
    return `Too little for a pan: ${how}, ${piecesText(pieces, recipe.pieceUnit)}.`;
  }
  const where = whereText(pan, count, filled, pressedLengthIn);
  const size = `${inchesText(cut.pieceLengthIn)} x ${inchesText(cut.pieceWidthIn)} in`;
  const grid = cut.rows * cut.columns === 1 ? 'one piece' : `cut ${cut.rows} x ${cut.columns}`;
  const over = cut.spare > 0 ? ` (${cut.spare} over)` : '';
  return `Slab: ${where}, ${grid} = ${piecesText(pieces, recipe.pieceUnit)}${count > 1 ? ' each' : ''}${over}, ${size}.`;
}

function whereText(pan: Slab['pan'], count: number, filled: number, pressedLengthIn: number): string {
  if (filled > 0.999) return `${count} x ${pan.name}`;
  if (pressedLengthIn < pan.lengthIn) {
    return `1 x ${pan.name}, pressed to ${inchesText(pressedLengthIn)} in of its ${inchesText(pan.lengthIn)} in`;
  }
  return `1 x ${pan.name}, ${Math.round(filled * 100)} % full (thinner: check it early)`;
}

function largerLine({ slabs }: ScaledRecipe): string[] {
  const larger = slabs?.larger;
  return larger ? [`Or ${larger.count} x ${larger.pan.name} at the same thickness.`] : [];
}

function spareLine({ slabs, pieces, recipe }: ScaledRecipe): string[] {
  if (!slabs || slabs.sparePlaces === 0 || (slabs.slabs.at(-1)?.filled ?? 1) < LEAST_FILLED) return [];
  const filled = piecesText(pieces + slabs.sparePlaces, recipe.pieceUnit);
  const rounded = slabs.pans > 1 ? `Pans rounded up to ${slabs.pans}: filling the last` : 'Filling the pan';
  return [`${rounded} makes ${filled}, ${slabs.sparePlaces} spare.`];
}

function leftLine({ ingredientLeftG }: ScaledRecipe): string[] {
  if (ingredientLeftG === undefined) return [];
  return [
    ingredientLeftG < 0.5 ? 'Nothing of it is left over.' : `Left of it: ${gramsText(ingredientLeftG)} g.`,
  ];
}

/** Which lines were rounded to a measure and what it did to a piece; grams in the table are exact. */
export function roundingLine(scaled: ScaledRecipe): string {
  const off = scaled.lines
    .map((line) => ({ name: line.food.name, deviation: (line.eachMix ?? line.measure).deviation }))
    .filter(({ deviation }) => Math.abs(deviation) >= 0.0005)
    .map(({ name, deviation }) => `${name} ${signedPercent(deviation)}`);
  if (off.length === 0) return 'Rounding: none, every measure is exact.';
  const protein = scaled.proteinDeviation;
  const kept =
    protein === undefined ? '' : ` Protein a ${scaled.recipe.pieceUnit}: ${signedPercent(protein)}.`;
  return `Rounded to measures: ${off.join(', ')}.${kept} Grams are exact.`;
}

/** Eggs that have to be beaten and weighed. */
export const countNotes = (scaled: ScaledRecipe): string[] =>
  scaled.lines.flatMap((line) => {
    const { note } = line.eachMix ?? line.measure;
    return note === undefined ? [] : [`${line.food.name}: ${note}${line.eachMix ? ', each mix' : ''}.`];
  });
