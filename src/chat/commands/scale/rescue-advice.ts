import type { Food, Role } from '../../../nutrition/food.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answer } from '../../answer.ts';

/** What to add, and how; `{liquid}` and its like name the recipe's own ingredient of that role. */
interface Advice {
  readonly title: string;
  readonly steps: readonly string[];
}

/** Common practice of a kitchen, no source. */
const ADVICE: Readonly<Record<string, Advice>> = {
  'too dry': {
    title: 'Add {liquid}, 1 Tbsp at a time',
    steps: [
      'Mix 20 seconds after each Tbsp.',
      'Stop when a handful pressed together holds as a ball.',
      'Protein powder takes up liquid for 5 min: wait before the next one.',
    ],
  },
  'too wet': {
    title: 'Add {dry}, 2 Tbsp at a time',
    steps: [
      'Mix, wait 5 min: oats and powder take up liquid.',
      'Stop when it holds as a ball and no longer smears.',
      'Chill 15 min before adding more.',
    ],
  },
  'too sticky': {
    title: 'Chill it 15 min first, then add {dry}, 1 Tbsp at a time',
    steps: [
      'Wet or oil the gloves and the knife.',
      'Press through parchment.',
      'Wipe the knife between cuts.',
    ],
  },
  crumbly: {
    title: 'Add {binder}, 1 Tbsp at a time, and press harder',
    steps: [
      'Work it until a handful holds as a ball.',
      'Still dry: {liquid}, 1 Tbsp at a time.',
      'Press with the flat of a pan, chill, then cut.',
    ],
  },
  'not setting': {
    title: 'Give it longer in the refrigerator: 2 h or overnight',
    steps: [
      'Cover it and keep it cold, 41 F (5 C) or below.',
      'Still soft: break it up, work in {dry}, 2 Tbsp at a time, press again.',
      'Or serve it as bites: portion with a disher.',
    ],
  },
  'too hard': {
    title: 'Let it stand 10 min before cutting',
    steps: [
      'Cut with a warm, dry knife.',
      'Next time {liquid}, 1 Tbsp more a batch.',
      'Too hard to bite: crumble it over yogurt instead.',
    ],
  },
  'too sweet': {
    title: 'Make a second mix without {sweetener} and blend the two',
    steps: ['A pinch of salt also takes the edge off.', 'The figures change: ask for macros of the new mix.'],
  },
  'too salty': {
    title: 'Make a second mix without salt and blend the two',
    steps: [
      'Say how much went in, and I work out what to add: "doubled the salt".',
      'Water or sugar does not take salt away.',
    ],
  },
  burnt: {
    title: 'Trim what is dark; if it tastes of it, throw it out',
    steps: ['Check the oven with a thermometer.', 'Count again before you log the batch.'],
  },
  overadded: {
    title: 'Which ingredient, and how much of it?',
    steps: [
      'Write it like "doubled the salt in oat bars" or "put in 2 cups oats instead of 1".',
      'Do not serve it yet.',
    ],
  },
  forgot: {
    title: 'Which ingredient was left out, and of which recipe?',
    steps: ['Write it like "forgot the honey in oat bars".', 'Keep the mix cold meanwhile.'],
  },
};

const ROLE_WORDS: readonly (readonly [name: string, role: Role, fallback: string])[] = [
  ['{liquid}', 'liquid', 'milk or water'],
  ['{dry}', 'dry_base', 'oats'],
  ['{binder}', 'binder', 'the nut butter or honey of the recipe'],
  ['{sweetener}', 'sweetener', 'the sweetener'],
];

/** Advice at the bench, naming the recipe's own ingredients so that no new allergen comes in. */
export function adviceFor(
  problem: string,
  recipe: Recipe | undefined,
  foods: ReadonlyMap<string, Food>,
  ingredient: string | undefined,
): Answer {
  const advice = ADVICE[problem];
  if (!advice) {
    throw new Problem(
      'not_understood',
      `I have no advice for "${problem.slice(0, 40)}".`,
      `Write one of: ${Object.keys(ADVICE).join(', ')}.`,
    );
  }
  const named = (text: string) =>
    ROLE_WORDS.reduce(
      (said, [mark, role, or]) => said.replace(mark, ofRole(recipe, foods, role) ?? or),
      text,
    );
  const only = recipe
    ? `Only what is in ${recipe.title} already: anything else changes the allergens.`
    : 'Only what the recipe already holds: anything else changes the allergens.';
  return {
    title: named(advice.title),
    sections: [
      { kind: 'steps', items: advice.steps.map(named) },
      { kind: 'text', text: only },
    ],
    cautions: [],
    next: [],
    audience: 'channel',
    data: { problem, ...(recipe ? { recipe: recipe.id } : {}), ...(ingredient ? { ingredient } : {}) },
  };
}

function ofRole(
  recipe: Recipe | undefined,
  foods: ReadonlyMap<string, Food>,
  role: Role,
): string | undefined {
  const line = recipe?.lines.find((each) => each.role === role);
  return line && foods.get(line.foodId)?.name;
}
