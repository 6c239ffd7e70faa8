import { isMeasureOnly } from '../nutrition/ingredient-list/read-measures.ts';
import { Problem } from '../nutrition/problem.ts';
import { readUnit } from '../nutrition/units/unit.ts';

/** Other words people use for a field of an ingredient. */
const SYNONYMS: Readonly<Record<string, string>> = {
  item: 'food',
  name: 'food',
  ingredient: 'food',
  product: 'food',
  qty: 'amount',
  quantity: 'amount',
  volume: 'amount',
  units: 'unit',
  uom: 'unit',
  g: 'grams',
  gram: 'grams',
  weight_g: 'grams',
  mass_g: 'grams',
  grams_total: 'grams',
  preparation: 'prep',
  form: 'prep',
  note: 'prep',
  notes: 'prep',
};

const fieldOf = (key: string): string => {
  const plain = key
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  return SYNONYMS[plain] ?? plain;
};

const noFood = (): boolean => false;

/**
 * One ingredient's fields under the names a card knows: `qty` and `quantity` are its amount, `item` and `ingredient`
 * its food, `measure` an amount with a unit or a unit, `weight` a weight beside the measure or the amount itself.
 * @throws Problem for a weight without a unit and for a field said twice.
 * @example ingredientFields({ item: 'sugar', weight: '4 oz' }) // { food: 'sugar', amount: '4 oz' }
 */
export function ingredientFields(written: Record<string, unknown>): Record<string, unknown> {
  const fields: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(written)) {
    if (value === null || value === undefined || value === '') continue;
    const field = fieldOf(key);
    if (Object.hasOwn(fields, field)) {
      throw new Problem('bad_file', `"${key}" says "${field}" a second time.`, 'Keep one.');
    }
    fields[field] = value;
  }
  return withWeight(withMeasure(fields));
}

function withMeasure({ measure, ...fields }: Record<string, unknown>): Record<string, unknown> {
  if (measure === undefined) return fields;
  const isUnit = typeof measure === 'string' && readUnit(measure) !== undefined;
  if (isUnit && fields.unit === undefined) return { ...fields, unit: measure };
  if (fields.amount === undefined) return { ...fields, amount: measure };
  throw new Problem(
    'bad_file',
    'This ingredient has both an amount and a measure.',
    'Write one amount, like "amount: 2 cups", and its weight beside it, like "weight: 162 g".',
  );
}

function withWeight({ weight, ...fields }: Record<string, unknown>): Record<string, unknown> {
  if (weight === undefined) return fields;
  if (typeof weight !== 'string' || !isMeasureOnly(weight, noFood) || !/[a-z#]/i.test(weight)) {
    throw new Problem(
      'bad_quantity',
      `The weight ${JSON.stringify(weight)} has no unit.`,
      'Write it like "weight: 162 g" or "weight: 1 lb 5 oz".',
    );
  }
  return fields.amount === undefined ? { ...fields, amount: weight } : { ...fields, weight };
}
