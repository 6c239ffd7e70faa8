import { readableGrams } from '../../../nutrition/measure/amount-text.ts';
import { ouncesText } from '../../../nutrition/measure/kitchen-measure.ts';
import { OUNCE_G } from '../../../nutrition/measure/published-rounding.ts';
import type { ScaledLine, ScaledRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { Section, TableColumn } from '../../answer.ts';
import { gramsText, piecesText } from './batch-words.ts';

/** What to take: for the batch, or for each mix when the bowl does not take it at once, with grams of all beside. */
export function ingredientTable(scaled: ScaledRecipe, outputUnit: string | undefined): Section {
  const { mixes, pieces, recipe } = scaled;
  const all = `For ${piecesText(pieces, recipe.pieceUnit)}`;
  const split = mixes.count > 1;
  const heading = split ? `${all}: into the bowl, ${mixes.count} times` : all;
  const unit = WEIGHED_UNITS.find((each) => each === outputUnit);
  if (unit) return { kind: 'table', heading, ...weighedTable(scaled, unit) };
  const columns = [left('Ingredient'), left('Measure'), right('Grams'), ...(split ? [right('All, g')] : [])];
  const rows = scaled.lines.map((line) => {
    const measure = line.eachMix ?? line.measure;
    const total = split ? [gramsText(line.measure.exactG)] : [];
    return [nameOf(line), measure.text, gramsText(measure.exactG), ...total];
  });
  return { kind: 'table', heading, columns, rows };
}

const WEIGHED_UNITS = ['g', 'kg', 'oz', 'lb'] as const;
type WeighedUnit = (typeof WEIGHED_UNITS)[number];

const left = (name: string): TableColumn => ({ name, align: 'left' });
const right = (name: string): TableColumn => ({ name, align: 'right' });

function weighedTable(
  { lines, mixes }: ScaledRecipe,
  unit: WeighedUnit,
): { columns: TableColumn[]; rows: string[][] } {
  const split = mixes.count > 1;
  return {
    columns: [left('Ingredient'), right('Weigh'), ...(split ? [right('All')] : [])],
    rows: lines.map((line) => [
      nameOf(line),
      weighed(line.measure.exactG / mixes.count, unit),
      ...(split ? [weighed(line.measure.exactG, unit)] : []),
    ]),
  };
}

function weighed(massG: number, unit: WeighedUnit): string {
  if (unit === 'g') return readableGrams(massG, 0.005).text;
  if (unit === 'kg')
    return massG < 100
      ? readableGrams(massG, 0.005).text
      : `${(massG / 1000).toFixed(massG < 1000 ? 3 : 2)} kg`;
  const ounces = massG / OUNCE_G;
  const rounded = Math.round(ounces * 4) / 4;
  return Math.abs(rounded / ounces - 1) <= 0.03 && rounded > 0
    ? ouncesText(rounded)
    : readableGrams(massG, 0.005).text;
}

const nameOf = ({ food, prep, optional }: ScaledLine): string =>
  `${food.name}${prep ? `, ${prep}` : ''}${optional ? ', optional' : ''}`;
