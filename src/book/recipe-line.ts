import { type Food, ROLES, type Role } from '../nutrition/food.ts';
import { type FoodFinder, findFood } from '../nutrition/ingredient-list/food-finder.ts';
import { readLine } from '../nutrition/ingredient-list/read-line.ts';
import { isCounted, resolveLine } from '../nutrition/ingredient-list/resolve-line.ts';
import type { WrittenLine } from '../nutrition/ingredient-list/written-line.ts';
import { countPortion, qualifierIn } from '../nutrition/portion/find-portion.ts';
import { massOf } from '../nutrition/portion/mass-of.ts';
import { Problem } from '../nutrition/problem.ts';
import type { ExactAmount } from '../nutrition/quantity/quantity.ts';
import type { MeasuredBy, RecipeLine } from '../nutrition/recipe.ts';
import { readUnit, unitName } from '../nutrition/units/unit.ts';
import type { IngredientFields } from './card-schema.ts';
import { amountOf, exactAmount, share } from './card-values.ts';

const MEASURED: readonly MeasuredBy[] = ['weighed', 'levelled', 'scooped', 'counted', 'label'];
const LONGEST_LINE = 200;
const LINE_HINT =
  'Write amount, unit and food, like "1 1/2 cups rolled oats, toasted" or "500 g greek yogurt".';
const ONE: ExactAmount = { numerator: 1, denominator: 1 };

/** What a line comes to before roles and tolerances. */
interface Measured {
  readonly food: Food;
  readonly amount: ExactAmount;
  readonly unit: string;
  readonly massG: number;
  readonly measuredBy: MeasuredBy;
}

/** One line of text of a card as a line of a recipe. @throws Problem that says what to write instead. */
export function lineFromText(text: string, finder: FoodFinder): RecipeLine {
  if (text.length > LONGEST_LINE)
    throw new Problem('too_long', 'This ingredient is too long to read.', LINE_HINT);
  const line = amountFirst(readLine(text, isFoodOf(finder)), finder);
  const written = text.trim().replace(/\s+/g, ' ');
  const optional = /\boptional\b/i.test(text) || line.leftToTheCook;
  if (line.leftToTheCook)
    return withRole({ ...toTaste(line, finder), tolerance: 1 }, line.prep, written, optional);
  return withRole(measured(line, finder), line.prep, written, optional);
}

/** The same for a line written as fields. @throws Problem */
export function lineFromFields(fields: IngredientFields, finder: FoodFinder): RecipeLine {
  const { food: words, amount, unit, grams, prep, tolerance, optional = false } = fields;
  if (fields.weight !== undefined || isInParts(amount, finder)) return lineInParts(fields, finder);
  if (amount === undefined && grams === undefined) {
    return {
      ...lineFromText(words, finder),
      ...(fields.role ? { role: roleOf(fields.role) } : {}),
      optional,
    };
  }
  const food = findFood(finder, words, prep)?.food;
  if (!food) throw unknownFood(words, finder);
  const said =
    amount === undefined ? `${grams} g` : [amount, unitSaid(amount, unit)].filter(Boolean).join(' ');
  const measure =
    amount === undefined ? { amount: exactAmount(grams ?? ''), unit: 'g' } : measureOf(amount, unit, finder);
  const massG = grams === undefined ? gramsOf(food, measure, `${words} ${prep ?? ''}`) : amountOf(grams);
  const measuredBy = fields.measured === undefined ? wayOf(measure.unit) : measuredWay(fields.measured);
  const line = withRole(
    { food, ...measure, massG, measuredBy },
    prep,
    `${said} ${words}${prep ? `, ${prep}` : ''}`,
    optional,
  );
  return {
    ...line,
    ...(fields.role ? { role: roleOf(fields.role) } : {}),
    ...(tolerance === undefined ? {} : { tolerance: share(tolerance, 'The tolerance', 1) }),
  };
}

/** "1 qt + 1 cup", "2 lb 4 oz": an amount in parts, or beside its weight, is read as a line of text is. */
function isInParts(amount: string | number | undefined, finder: FoodFinder): boolean {
  return typeof amount === 'string' && readLine(`${amount} x`, isFoodOf(finder)).measures.length > 1;
}

function lineInParts(fields: IngredientFields, finder: FoodFinder): RecipeLine {
  const { food, amount, unit, weight, prep, role, optional = false } = fields;
  const stated = weight === undefined ? '' : `(${weight})`;
  const text = [amount, unit, stated, food].filter(Boolean).join(' ');
  const line = lineFromText(prep ? `${text}, ${prep}` : text, finder);
  return { ...line, ...(role ? { role: roleOf(role) } : {}), optional: optional || line.optional };
}

/** `amount: 4, unit: scoop` is said "4 scoops". */
function unitSaid(amount: string | number, unit: string | undefined): string | undefined {
  const known = unit === undefined ? undefined : readUnit(unit);
  return known ? unitName(known, amountOf(amount)) : unit;
}

const isFoodOf =
  (finder: FoodFinder) =>
  (words: string): boolean =>
    finder.find(words) !== undefined;

/** "salt, pinch" and "honey, 2 Tbsp": the food first, its amount after the comma. */
function amountFirst(line: WrittenLine, finder: FoodFinder): WrittenLine {
  if (line.measures.length > 0 || line.leftToTheCook || !line.prep) return line;
  const turned = readLine(
    `${/^[a-z]/i.test(line.prep) ? `1 ${line.prep}` : line.prep} ${line.foodWords}`,
    isFoodOf(finder),
  );
  const isMeasure = turned.measures[0]?.unitId !== undefined && turned.foodWords === line.foodWords;
  return isMeasure ? { ...turned, written: line.written } : line;
}

function measured(line: WrittenLine, finder: FoodFinder): Measured {
  const [first, ...further] = line.measures;
  if (!first && isForThePan(line, finder)) return toTaste(line, finder);
  if (!first) throw new Problem('bad_quantity', `"${line.written}" has no amount.`, LINE_HINT);
  const resolved = resolveLine(line, finder);
  if (!isCounted(resolved)) {
    if (resolved.reason === 'unknown_food') throw unknownFood(line.foodWords, finder);
    throw new Problem(
      resolved.reason === 'no_portion' ? 'no_portion' : 'bad_quantity',
      resolved.message,
      resolved.hint,
    );
  }
  const { food, measuredBy } = resolved;
  const unit = first.unitId ?? '';
  const { quantity } = first;
  const amount = quantity.most
    ? exactAmount(String((quantity.amount + quantity.most.amount) / 2))
    : quantity.exact;
  if (further.length > 0) {
    // "1/4 cup plus 2 tbsp" is one amount only by weight.
    return {
      food,
      amount: exactAmount(resolved.massG.toFixed(2)),
      unit: 'g',
      massG: resolved.massG,
      measuredBy,
    };
  }
  const massG = line.stated
    ? resolved.massG
    : gramsOf(food, { amount, unit }, `${line.foodWords} ${line.prep ?? ''}`);
  return { food, amount, unit, massG, measuredBy };
}

/** "Nonstick cooking spray" on a card has no amount and needs none. */
const isForThePan = (line: WrittenLine, finder: FoodFinder): boolean =>
  /\bspray\b/i.test(line.foodWords) && findFood(finder, line.foodWords, line.prep) !== undefined;

/** "Salt to taste" is counted as a pinch, so that its food and allergens are never lost. */
function toTaste(line: WrittenLine, finder: FoodFinder): Measured {
  const food = findFood(finder, line.foodWords, line.prep)?.food;
  if (!food) throw unknownFood(line.foodWords, finder);
  const unit = countPortion(food)?.unit === 'spray' ? 'spray' : 'pinch';
  return { food, amount: ONE, unit, massG: massOf(food, 1, unit).massG, measuredBy: 'scooped' };
}

/** `amount: 2, unit: cups` and `amount: 2 cups` mean the same. */
function measureOf(
  amount: string | number,
  unit: string | undefined,
  finder: FoodFinder,
): { readonly amount: ExactAmount; readonly unit: string } {
  if (unit !== undefined)
    return { amount: exactAmount(amount), unit: readUnit(unit)?.id ?? unit.trim().toLowerCase() };
  const [measure, ...further] = readLine(String(amount), isFoodOf(finder)).measures;
  if (!measure || further.length > 0) return { amount: exactAmount(amount), unit: '' };
  return { amount: measure.quantity.exact, unit: measure.unitId ?? '' };
}

function gramsOf(food: Food, { amount, unit }: { amount: ExactAmount; unit: string }, words: string): number {
  const count = amount.numerator / amount.denominator;
  if (!(count > 0)) {
    throw new Problem(
      'bad_quantity',
      `${count} ${food.name} is an amount of nothing.`,
      'Write a number above 0, or delete the line.',
    );
  }
  return massOf(food, count, unit, qualifierIn(food, words)).massG;
}

function withRole(
  line: Measured & { readonly tolerance?: number },
  prep: string | undefined,
  written: string,
  optional: boolean,
): RecipeLine {
  const { food, ...rest } = line;
  return {
    foodId: food.id,
    ...rest,
    written,
    role: food.roles[0] ?? 'flavor',
    ...(prep ? { prep } : {}),
    optional,
  };
}

const plainWord = (written: string): string =>
  written
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');

function wayOf(unit: string): MeasuredBy {
  if (unit === 'scoop') return 'scooped';
  const kind = readUnit(unit)?.kind;
  return kind === 'mass' ? 'weighed' : kind === 'volume' ? 'levelled' : 'counted';
}

function measuredWay(written: string): MeasuredBy {
  const way = MEASURED.find((known) => known === plainWord(written).replace('leveled', 'levelled'));
  if (way) return way;
  throw new Problem(
    'bad_file',
    `"${written}" is no way of measuring.`,
    `Write one of ${MEASURED.join(', ')}.`,
  );
}

function roleOf(written: string): Role {
  const plain = plainWord(written).replace('colour', 'color').replace('flavour', 'flavor');
  const role = ROLES.find((known) => known === plain);
  if (role) return role;
  throw new Problem('bad_file', `"${written}" is not a role.`, `Write one of ${ROLES.join(', ')}.`);
}

function unknownFood(words: string, finder: FoodFinder): Problem {
  const nearest = finder.nearest(words, 3).map((food) => food.name);
  const add = 'add the food to foods.csv or products of the kitchen folder.';
  return new Problem(
    'unknown_food',
    `There is no food called "${words}" in this kitchen.`,
    nearest.length === 0 ? `Correct the name, or ${add}` : `Nearest: ${nearest.join('; ')}. Or ${add}`,
  );
}
