import type { Book } from '../../../nutrition/book.ts';
import type { MeasuredAmount } from '../../../nutrition/certainty/range.ts';
import { changedMix } from '../../../nutrition/changes.ts';
import type { Food } from '../../../nutrition/food.ts';
import { parseIngredientList, type UncountedLine } from '../../../nutrition/ingredient-list.ts';
import { nameKey } from '../../../nutrition/name-key.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { recipeAmounts } from '../../../nutrition/recipe-totals.ts';
import { type Finders, findersOf } from '../../finders.ts';
import type { Slots } from '../../slots.ts';
import { grams } from './figure-words.ts';
import { itemLine, slotList, slotNumber, slotText } from './slot-values.ts';
import type { Subject } from './subject.ts';

/** A subject, or the recipes that the words fit alike. */
export type Resolved = { readonly subject: Subject } | { readonly between: readonly Recipe[] };

/**
 * What the request is about: its recipe, else its list of foods. Undefined when it names neither.
 * Throws `unknown_recipe` or `unknown_food` with the nearest three.
 */
export function resolveSubject(slots: Slots, book: Book): Resolved | undefined {
  const finders = findersOf(book);
  const named = slotText(slots, 'recipe');
  if (named !== undefined) return resolveNamed(named, slots, book, finders);
  const list = listText(slots);
  return list === undefined
    ? undefined
    : { subject: changed(listSubject(list, slots, finders), slots, finders) };
}

function resolveNamed(named: string, slots: Slots, book: Book, finders: Finders): Resolved {
  const match = finders.recipes.find(named);
  if (match.kind === 'ambiguous') return { between: match.recipes };
  if (match.kind === 'found') {
    return { subject: changed(recipeSubject(match.recipe, slots, book), slots, finders) };
  }
  const list = parseIngredientList(named, finders.foods);
  const isFood = list.counted.length > 0 || list.uncounted.some((line) => line.food);
  if (isFood) return { subject: changed(listSubject(named, slots, finders), slots, finders) };
  throw unknownRecipe(named, finders);
}

/** What a name in a comparison means: a food of exactly that name before a recipe that only holds the word. */
export function resolveName(named: string, book: Book): Resolved {
  const finders = findersOf(book);
  const match = finders.recipes.find(named);
  const exact = match.kind === 'found' && isCalled(match.recipe, named);
  const food = exact ? undefined : finders.foods.find(named);
  if (food) return { subject: hundredGrams(food) };
  return resolveNamed(named, {}, book, finders);
}

const isCalled = (recipe: Recipe, named: string): boolean =>
  [recipe.id, recipe.title, ...recipe.aliases].some((name) => nameKey(name) === nameKey(named));

function unknownRecipe(named: string, finders: Finders): Problem {
  const recipes = finders.recipes.nearest(named, 3).map((recipe) => recipe.title);
  const near = [...recipes, ...finders.foods.nearest(named, 3).map((food) => food.name)].slice(0, 3);
  const hint = near.length > 0 ? `Nearest: ${near.join(', ')}.` : 'Type "recipes" to see what there is.';
  return new Problem('unknown_recipe', `This kitchen has no recipe or food called "${named}".`, hint);
}

/** A recipe as its card is, with the cut that was said. */
export function recipeSubject(recipe: Recipe, slots: Slots, book: Book): Subject {
  const amounts = recipeAmounts(recipe, book.foods).map((amount, place): MeasuredAmount => {
    const line = recipe.lines[place];
    return {
      ...amount,
      measuredBy: line?.measuredBy ?? 'weighed',
      ...(line?.tolerance !== undefined && { tolerance: line.tolerance }),
    };
  });
  return {
    title: recipe.title,
    recipe,
    amounts,
    pieces: wholePieces(slotNumber(slots, 'pieces')) ?? recipe.yieldPieces,
    pieceUnit: recipe.pieceUnit,
    handlingLoss: recipe.handlingLoss,
    moistureLoss: recipe.moistureLoss,
    uncounted: [],
    notes: optionalNotes(recipe, book),
  };
}

function optionalNotes(recipe: Recipe, book: Book): string[] {
  const optional = recipe.lines.filter((line) => line.optional);
  const names = optional.map((line) => book.foods.get(line.foodId)?.name ?? line.foodId);
  return names.length > 0 ? [`Optional ${names.join(' and ')} counted in.`] : [];
}

/** Crumbs: a half sheet of dough has no more spoonfuls. */
const MOST_PIECES = 10_000;

function wholePieces(pieces: number | undefined): number | undefined {
  if (pieces === undefined) return undefined;
  if (Number.isSafeInteger(pieces) && pieces >= 1 && pieces <= MOST_PIECES) return pieces;
  throw new Problem(
    'bad_quantity',
    `A batch is cut into a whole number of pieces, from 1 to ${MOST_PIECES.toLocaleString('en-US')}.`,
    'Write it like "cut into 8".',
  );
}

/** The foods that were typed, as one text for the list reader. */
function listText(slots: Slots): string | undefined {
  const items = slotList(slots, 'items').map(itemLine);
  if (items.length > 0) return items.join('; ');
  const ingredient = slotText(slots, 'ingredient');
  if (ingredient === undefined) return undefined;
  const amount = slotNumber(slots, 'portion') ?? slotNumber(slots, 'quantity') ?? slotNumber(slots, 'amount');
  const unit = slotText(slots, 'portion_unit') ?? slotText(slots, 'unit') ?? slotText(slots, 'amount_unit');
  if (amount === undefined && unit === undefined) return ingredient;
  return [amount ?? 1, unit, ingredient].filter((part) => part !== undefined).join(' ');
}

function listSubject(text: string, slots: Slots, finders: Finders): Subject {
  const list = parseIngredientList(text, finders.foods);
  const alone = list.uncounted[0]?.food;
  const only = list.counted.length === 0 && list.uncounted.length === 1 && alone;
  if (only) return hundredGrams(only);
  const [firstLost] = list.uncounted;
  if (list.counted.length === 0) throw lostLine(firstLost);
  const pieces = wholePieces(slotNumber(slots, 'pieces')) ?? list.pieces ?? 1;
  const [first, ...others] = list.counted;
  return {
    title: listTitle(list.counted.map((line) => line.food.name)),
    amounts: list.counted,
    pieces,
    pieceUnit: 'piece',
    handlingLoss: 0,
    moistureLoss: 0,
    uncounted: list.uncounted,
    notes: list.counted.map((line) => noteOf(line.food, line.massG, line.said, line.notes)),
    ...(first && others.length === 0 && { food: first.food }),
  };
}

/** The first three foods, and how many more. */
const listTitle = (names: readonly string[]): string =>
  `${names.slice(0, 3).join(' + ')}${names.length > 3 ? ` and ${names.length - 3} more` : ''}`;

const noteOf = (food: Food, massG: number, said: string, notes: readonly string[]): string =>
  `${food.name}: ${grams(massG)} (${[said, ...notes].join('; ')})`;

/** A food asked about without an amount and without a piece of its own is told by 100 g. */
function hundredGrams(food: Food): Subject {
  return {
    title: food.name,
    amounts: [{ food, massG: 100, measuredBy: 'weighed' }],
    pieces: 1,
    pieceUnit: 'piece',
    handlingLoss: 0,
    moistureLoss: 0,
    uncounted: [],
    notes: ['No amount was said, so this is for 100 g.'],
    food,
  };
}

function lostLine(line: UncountedLine | undefined): Problem {
  if (!line)
    return new Problem('needs_more', 'Which food?', 'Write it like "2 tbsp peanut butter + banana".');
  const code = line.reason === 'unknown_food' ? 'unknown_food' : 'bad_quantity';
  return new Problem(code, line.message, line.hint);
}

/** Puts in and leaves out what the request says, for the whole batch or list. */
function changed(subject: Subject, slots: Slots, finders: Finders): Subject {
  const addText = slotList(slots, 'add').map(itemLine).join('; ');
  const removeWords = slotList(slots, 'remove').map(itemLine);
  if (addText === '' && removeWords.length === 0) return subject;
  const added = addText === '' ? undefined : parseIngredientList(addText, finders.foods);
  const [unread] = added?.uncounted ?? [];
  if (unread) throw lostLine(unread);
  const remove = removeWords.flatMap((words) => foodsMeant(words, subject, finders));
  const mix = changedMix(subject.amounts, { add: added?.counted ?? [], remove });
  const whole = subject.recipe ? ' to the whole batch' : '';
  const notThere = removeWords.filter((words) => foodsMeant(words, subject, finders).length === 0);
  const { food: _single, ...rest } = subject;
  return {
    ...rest,
    amounts: mix.amounts,
    notes: [
      ...subject.notes,
      ...(added?.counted ?? []).map(
        (line) => `Added${whole}: ${noteOf(line.food, line.massG, line.said, line.notes)}`,
      ),
      ...mix.removed.map((amount) => `Left out: ${amount.food.name}, ${grams(amount.massG)}`),
      ...notThere.map((words) => `There is no ${words} in it, so nothing was left out for it.`),
    ],
  };
}

/** The foods of the subject a person means by a word: the food itself, else those whose name holds the word. */
function foodsMeant(words: string, subject: Subject, finders: Finders): Food[] {
  const there = subject.amounts.map((amount) => amount.food);
  const found = finders.foods.find(words);
  if (found && there.includes(found)) return [found];
  const plain = words.toLowerCase();
  const stem = plain.length > 3 ? plain.replace(/e?s$/, '') : plain;
  return there.filter((food) =>
    [food.name, ...food.aliases].some((name) => ` ${name.toLowerCase()}`.includes(` ${stem}`)),
  );
}
