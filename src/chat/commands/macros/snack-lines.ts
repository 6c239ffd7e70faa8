import type { Food } from '../../../nutrition/food.ts';
import { type SnackAddition, type SnackPart, snackCheck } from '../../../nutrition/snack-check.ts';
import { readUnit } from '../../../nutrition/units/unit.ts';
import type { Asking } from './answer-figures.ts';
import { grams } from './figure-words.ts';

const PART_WORDS: { readonly [part in SnackPart]: string } = {
  carbohydrate: 'a carbohydrate source',
  protein: 'a protein source',
  color: 'color (fruit, vegetable or a healthy fat)',
};

/** The snack check in one line, with a fitting addition and its allergens. Common practice. */
export function snackLines({ subject, basis, book }: Asking): string[] {
  const piece = subject.amounts.map(({ food, massG }) => ({ food, massG: massG * basis.factor }));
  const check = snackCheck(piece, book.foods.values());
  if (check.missing.length === 0) {
    return ['As a snack it has a carbohydrate source, a protein source and color.'];
  }
  const missing = check.missing.map((part) => PART_WORDS[part]).join(' and ');
  return [`As a snack it lacks ${missing}.`, ...check.additions.map(additionLine)];
}

function additionLine({ food, portion, count }: SnackAddition): string {
  const unit = readUnit(portion.unit)?.one ?? portion.unit;
  const amount = `${count === 1 ? '1' : '1/4'} ${unit} (${grams(portion.massG * count)})`;
  return `Could add: ${food.name}, ${amount}. ${allergenWords(food)}`;
}

function allergenWords(food: Food): string {
  const words = (marks: Food['contains']) =>
    marks
      .map((mark) => `${mark.allergen.replace('_', ' ')}${mark.species ? ` (${mark.species})` : ''}`)
      .join(', ');
  const contains =
    food.contains.length > 0 ? `Contains ${words(food.contains)}.` : 'No listed allergen known.';
  const advisory = food.advisory.length > 0 ? ` May contain ${words(food.advisory)}.` : '';
  const unread = food.allergenBasis === 'kind' ? ' Check its label.' : '';
  return `${contains}${advisory}${unread}`;
}
