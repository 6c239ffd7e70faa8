import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { loadBook } from '../../src/book/load-book.ts';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { noMemory } from '../../src/kitchen/no-memory.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { PUBLISHED_TOLERANCES, type PublishedNutrient } from './tolerances.ts';

/** A recipe as its page prints it: typed into the chat, written as a card, and its figures per serving. */
export interface PublishedRecipe {
  readonly file: string;
  readonly source: string;
  readonly printed: Readonly<Record<string, number>>;
  readonly typed: string;
  readonly card: Readonly<Record<string, unknown>>;
}

/** What came back for one recipe on one way in. */
export interface PublishedOutcome {
  readonly recipe: PublishedRecipe;
  readonly way: 'typed' | 'card';
  /** What the kitchen folder complains of; the chat has none. */
  readonly problems: readonly string[];
  readonly notCounted: readonly { readonly written: string; readonly reason: string }[];
  /** Ours and theirs a serving, by nutrient; ours is absent when no figure came. */
  readonly figures: readonly PublishedFigure[];
}

export interface PublishedFigure {
  readonly nutrient: PublishedNutrient;
  readonly theirs: number;
  readonly ours: number | undefined;
}

const KEYS: Readonly<Record<PublishedNutrient, string>> = {
  energy: 'energyKcal',
  protein: 'proteinG',
  carbohydrate: 'carbohydrateG',
  fat: 'fatG',
};

/** The recipes of `tests/outside/published`, one a file. */
export function publishedRecipes(folder: string): PublishedRecipe[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => ({ ...(parse(readFileSync(join(folder, file), 'utf8')) as PublishedRecipe), file }));
}

/** Asks for the macros of each recipe both ways: its list in the chat, and its card in a kitchen folder. */
export async function comparePublished(builtIn: string, folder: string): Promise<PublishedOutcome[]> {
  const book = loadBook([builtIn]);
  const outcomes: PublishedOutcome[] = [];
  for (const recipe of publishedRecipes(folder)) {
    outcomes.push(outcomeOf(recipe, 'typed', await ask(book, recipe.typed), []));
    const own = bookWith(builtIn, recipe);
    const title = String(recipe.card.title ?? recipe.card.name);
    const problems = own.problems.map(({ field, message }) => `${field}: ${message}`);
    outcomes.push(outcomeOf(recipe, 'card', await ask(own, `macros ${title}`), problems));
  }
  return outcomes;
}

function bookWith(builtIn: string, recipe: PublishedRecipe): Book {
  const kitchen = mkdtempSync(join(tmpdir(), 'published-'));
  try {
    mkdirSync(join(kitchen, 'cards'));
    writeFileSync(join(kitchen, 'cards', recipe.file), stringify(recipe.card));
    return loadBook([builtIn, kitchen]);
  } finally {
    rmSync(kitchen, { recursive: true });
  }
}

function ask(book: Book, text: string): Promise<Reply> {
  const chat = createChat({ book, clock: { nowMs: () => 0 }, ...noMemory }, (error) => {
    throw error;
  });
  const asker = { role: 'staff', who: 'WP-01', workspace: 'test' } as const;
  return chat.ask({ text, asker, conversation: 'published', isPrivate: true, nowMs: 0 });
}

function outcomeOf(
  recipe: PublishedRecipe,
  way: PublishedOutcome['way'],
  { answer }: Reply,
  problems: readonly string[],
): PublishedOutcome {
  const data = answer?.data ?? {};
  const figures = (Object.keys(PUBLISHED_TOLERANCES) as PublishedNutrient[]).flatMap((nutrient) => {
    const theirs = recipe.printed[KEYS[nutrient]];
    const ours = data[KEYS[nutrient]];
    return theirs === undefined
      ? []
      : [{ nutrient, theirs, ours: typeof ours === 'number' ? ours : undefined }];
  });
  const notCounted = (data.notCounted ?? []) as PublishedOutcome['notCounted'];
  return { recipe, way, problems, notCounted, figures };
}

/** Distances of one nutrient on one way in, as shares of what is printed; what has no figure counts as wholly off. */
export function publishedShares(
  outcomes: readonly PublishedOutcome[],
  way: PublishedOutcome['way'],
  nutrient: PublishedNutrient,
): number[] {
  return outcomes
    .filter((outcome) => outcome.way === way)
    .flatMap(({ figures }) => figures.filter((figure) => figure.nutrient === nutrient))
    .map(({ ours, theirs }) => (ours === undefined ? 1 : Math.abs(ours - theirs) / theirs));
}
