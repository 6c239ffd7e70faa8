import type { BookProblem } from '../nutrition/book.ts';
import type { Food } from '../nutrition/food.ts';
import type { ReadFood } from './food-table.ts';
import { undeclared } from './name-rules.ts';
import { implausible } from './plausibility.ts';

/**
 * All that is wrong with a food that was read; a food with any problem is left out, because an undeclared
 * allergen or a slipped decimal point harms more than a missing food.
 *
 * @example
 * checkFood({ food: almondsWithoutAllergen, file: 'foods.csv', line: 9 })[0]?.field // 'contains'
 */
export function checkFood(read: ReadFood): BookProblem[] {
  const { food } = read;
  return [
    ...namesProblems(food),
    ...statementProblems(food),
    ...contradictions(food),
    ...figureProblems(read),
  ].map(({ field, message, hint }) => ({
    file: read.file,
    ...(read.line === undefined ? {} : { line: read.line }),
    field,
    message: `${food.id}: ${message}`,
    hint,
  }));
}

type Found = Pick<BookProblem, 'message' | 'hint'> & { readonly field: string };

function namesProblems(food: Food): Found[] {
  return undeclared(food.name, food).map(({ allergen, word }) => ({
    field: 'contains',
    message: `the name says "${word}", but ${allergen} is not declared.`,
    hint: `Add ${allergen} to contains; if it truly has none, say so in the name ("${allergen}-free …").`,
  }));
}

function statementProblems(food: Food): Found[] {
  const label = food.product;
  if (label === undefined) return [];
  // Clause by clause, so that "gluten-free oats" does not excuse the "bread flour" two words on.
  const clauses = `${label.ingredientsStatement},${label.allergenStatement ?? ''}`.split(/[,;.()[\]]/);
  const inIt = clauses.flatMap((clause) =>
    undeclared(clause, food).map(({ allergen, word }) => ({
      field: 'contains',
      message: `the label says "${word}", but ${allergen} is not in contains.`,
      hint: `Add ${allergen} to contains.`,
    })),
  );
  const known = { contains: [...food.contains, ...food.advisory], advisory: food.advisory };
  const mayBe = undeclared(warningsOf(label.advisoryStatement), known).map(({ allergen, word }) => ({
    field: 'advisory',
    message: `the label warns of "${word}", but ${allergen} is not in advisory.`,
    hint: `Add ${allergen} to advisory.`,
  }));
  return [...inIt, ...mayBe];
}

/** The sentences of an advisory statement that warn; "made in a peanut-free facility" or "free of" does not. */
function warningsOf(statement = ''): string {
  return statement
    .split('.')
    .filter((sentence) => !/\b(?:free (?:from|of)|-free|no|not|without)\b/i.test(sentence))
    .join('.');
}

function contradictions(food: Food): Found[] {
  const has = (allergen: string) => food.contains.some((mark) => mark.allergen === allergen);
  const found: Found[] = [];
  const say = (when: boolean, field: string, message: string, hint: string) => {
    if (when) found.push({ field, message, hint });
  };
  const animal = ['milk', 'egg', 'fish', 'shellfish', 'mollusc'].filter(has);
  const grain = food.contains.some(
    ({ allergen, species }) => allergen === 'wheat' || (allergen === 'gluten_cereal' && species !== 'oats'),
  );
  say(
    food.vegan && animal.length > 0,
    'vegan',
    `it is vegan and has ${animal.join(', ')}.`,
    'Write no for vegan.',
  );
  say(food.vegan && food.meat, 'vegan', 'it is vegan and meat.', 'Write no for vegan.');
  say(food.vegan && !food.vegetarian, 'vegetarian', 'vegan food is vegetarian.', 'Write yes for vegetarian.');
  say(
    food.vegetarian && (food.meat || has('fish') || has('shellfish')),
    'vegetarian',
    'it is vegetarian and has meat or fish.',
    'Write no for vegetarian.',
  );
  say(food.pork && !food.meat, 'meat', 'pork is meat.', 'Write yes for meat.');
  say(
    grain && food.gluten === 'no_gluten_grain',
    'gluten',
    'it has wheat, barley or rye and says it has no gluten grain.',
    'Write contains; or labelled_gluten_free when the package says so.',
  );
  say(
    food.lactose === 'contains' && !has('milk'),
    'contains',
    'it has lactose and does not declare milk.',
    'Add milk to contains, or write none for lactose.',
  );
  return found;
}

function figureProblems({ food, implausibleBecause }: ReadFood): Found[] {
  if (implausibleBecause !== undefined) return [];
  return implausible(food).map((message) => ({
    field: 'energy_kcal',
    message: `${message}.`,
    hint: 'Check the figures against their source and that they are per 100 g; if they are right, say why in the column implausible_because.',
  }));
}
