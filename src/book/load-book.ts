import { existsSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import type { Book, BookProblem, KitchenSettings } from '../nutrition/book.ts';
import { createFoodIndex } from '../nutrition/find-food.ts';
import type { Food } from '../nutrition/food.ts';
import type { Recipe } from '../nutrition/recipe.ts';
import { filesIn, requireFolder, requireKitchenIn, YAML_FILE } from './folder.ts';
import { readKitchenFile } from './kitchen-file.ts';
import { loadFoods } from './load-foods.ts';
import { type FieldPath, toBookProblem } from './place.ts';
import { type CardContext, readCard } from './read-card.ts';
import { DEFAULT_SETTINGS, readSettings, type WrittenSettings, withSettings } from './settings-file.ts';

/** Folders and files of a kitchen that hold something other than recipe cards. */
const NOT_CARDS = new Set(['kitchen', 'products', 'foods', 'scenario', 'demo']);

/** One kitchen folder, its settings read and its cards not yet. */
interface Layer {
  readonly directory: string;
  readonly written: WrittenSettings;
}

/**
 * Reads what a kitchen cooks from: the built-in folder first, then the kitchen's own, which adds to it, replaces
 * what has the same id, or with `built_in: replace` cooks without its recipes and products. What is wrong in a
 * folder is told in `problems`; one bad recipe is left out and the rest works.
 * @throws Problem `bad_option` for a folder that is not there, or a kitchen's own that holds nothing.
 * @example loadBook(['recipes']).recipes.get('oat-bars')?.yieldPieces // 12
 */
export function loadBook(directories: readonly string[]): Book {
  const problems: BookProblem[] = [];
  const layers = directories.map((directory, i) => {
    requireFolder(directory);
    if (i > 0) requireKitchenIn(directory);
    return { directory, written: settingsIn(directory, problems) };
  });
  const settings = layers.reduce(
    (base, { written }) => withSettings(written.built_in === 'replace' ? withoutPar(base) : base, written),
    DEFAULT_SETTINGS,
  );
  const foods = foodsOf(layers, problems);
  const recipes = recipesOf(layers, foods, settings, problems);
  checkPar(settings, recipes, problems);
  return { settings, foods, recipes, problems };
}

const withoutPar = (settings: KitchenSettings): KitchenSettings => ({ ...settings, par: new Map() });

/** How a file is called in a problem: the folder's own name and the way from there. */
const calledIn = (directory: string, file: string): string =>
  join(basename(directory), relative(directory, file)).split(sep).join('/');

function settingsIn(directory: string, problems: BookProblem[]): WrittenSettings {
  const path = ['kitchen.yaml', 'kitchen.yml']
    .map((name) => join(directory, name))
    .find((name) => existsSync(name));
  if (path === undefined) return {};
  const called = calledIn(directory, path);
  const file = readKitchenFile(path);
  if (!file.ok) {
    problems.push(toBookProblem(called, file.line, file.complaint));
    return {};
  }
  const { written, complaints } = readSettings(file.value);
  problems.push(
    ...complaints.map((complaint) => toBookProblem(called, file.lineOf(complaint.path), complaint)),
  );
  return written;
}

function foodsOf(layers: readonly Layer[], problems: BookProblem[]): ReadonlyMap<string, Food> {
  const loaded = loadFoods(layers.map(({ directory }) => directory));
  problems.push(...loaded.problems);
  const from = startOf(layers);
  if (from === 0) return loaded.foods;
  // Foods are facts and stay; a package on another kitchen's shelf, approved by another dietitian, does not.
  const before = loadFoods(layers.slice(0, from).map(({ directory }) => directory)).foods;
  return new Map([...loaded.foods].filter(([id, food]) => !food.product || !isSame(before.get(id), food)));
}

const isSame = (one: Food | undefined, other: Food): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Place of the last layer that replaces all before it. */
const startOf = (layers: readonly Layer[]): number =>
  Math.max(
    0,
    layers.findLastIndex(({ written }) => written.built_in === 'replace'),
  );

function recipesOf(
  layers: readonly Layer[],
  foods: ReadonlyMap<string, Food>,
  settings: KitchenSettings,
  problems: BookProblem[],
): ReadonlyMap<string, Recipe> {
  const finder = createFoodIndex(foods.values());
  const recipes = new Map<string, Recipe>();
  for (const { directory } of layers.slice(startOf(layers))) {
    for (const [id, recipe] of cardsIn(directory, { finder, settings }, problems)) recipes.set(id, recipe);
  }
  return recipes;
}

function cardsIn(
  directory: string,
  context: Omit<CardContext, 'fallbackId'>,
  problems: BookProblem[],
): Map<string, Recipe> {
  const recipes = new Map<string, Recipe>();
  const firstIn = new Map<string, string>();
  for (const path of filesIn(directory, YAML_FILE)) {
    const called = calledIn(directory, path);
    if (
      NOT_CARDS.has(
        relative(directory, path)
          .split(sep)[0]
          ?.replace(/\.ya?ml$/i, '') ?? '',
      )
    )
      continue;
    for (const recipe of recipesIn(path, called, context, problems)) {
      const earlier = firstIn.get(recipe.id);
      if (earlier !== undefined) {
        problems.push({
          file: called,
          field: 'id',
          message: `The id "${recipe.id}" is already used by ${earlier}; this recipe is left out.`,
          hint: 'Give one of the two another id or title.',
        });
        continue;
      }
      firstIn.set(recipe.id, called);
      recipes.set(recipe.id, recipe);
    }
  }
  return recipes;
}

function recipesIn(
  path: string,
  called: string,
  context: Omit<CardContext, 'fallbackId'>,
  problems: BookProblem[],
): Recipe[] {
  const file = readKitchenFile(path);
  if (!file.ok) {
    problems.push(toBookProblem(called, file.line, file.complaint));
    return [];
  }
  return cardsOf(file.value).flatMap(({ at, value }) => {
    const fallbackId = basename(path).replace(/\.ya?ml$/i, '');
    const { recipe, complaints } = readCard(value, { ...context, fallbackId });
    for (const complaint of complaints) {
      const where = [...at, ...complaint.path];
      problems.push(toBookProblem(called, file.lineOf(where), complaint));
    }
    return recipe ? [recipe] : [];
  });
}

/** A file holds one recipe, or several as a list or under `recipes:`. */
function cardsOf(value: unknown, at: FieldPath = []): { at: FieldPath; value: unknown }[] {
  if (Array.isArray(value)) return value.map((one, place) => ({ at: [...at, place], value: one }));
  const inside = (value as { recipes?: unknown } | null)?.recipes;
  return Array.isArray(inside) ? cardsOf(inside, ['recipes']) : [{ at, value }];
}

function checkPar(
  settings: KitchenSettings,
  recipes: ReadonlyMap<string, Recipe>,
  problems: BookProblem[],
): void {
  for (const id of settings.par.keys()) {
    if (recipes.has(id)) continue;
    problems.push({
      file: 'kitchen.yaml',
      field: `par.${id}`,
      message: `There is no recipe "${id}" to keep a par of.`,
      hint: `Recipes are ${[...recipes.keys()].join(', ') || 'none yet'}.`,
    });
  }
}
