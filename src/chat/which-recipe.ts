import type { Recipe } from '../nutrition/recipe.ts';
import type { Answered, Asked } from './command.ts';
import { findersOf } from './finders.ts';
import type { Intent } from './slots.ts';
import { unknownRecipe } from './unknown-recipe.ts';

/**
 * The recipe a request names, else the one this conversation is about; several when the words fit alike.
 * Throws `unknown_recipe`.
 */
export async function recipesMeant(asked: Asked): Promise<Recipe | readonly Recipe[] | undefined> {
  const { book } = asked.kitchen;
  const said = asked.slots.recipe;
  if (typeof said !== 'string') return recipeByPiece(asked);
  const known = book.recipes.get(said);
  if (known) return known;
  const match = findersOf(book).recipes.find(said);
  if (match.kind === 'unknown') throw await unknownRecipe(book, said);
  return match.kind === 'found' ? match.recipe : match.recipes;
}

/** The recipe of exactly that name, else the one this conversation is about. Throws `unknown_recipe`. */
export async function recipeMeant(asked: Asked): Promise<Recipe | undefined> {
  const { book } = asked.kitchen;
  const said = asked.slots.recipe;
  if (typeof said !== 'string') return recipeByPiece(asked);
  const names = (recipe: Recipe) => [recipe.id, recipe.title, ...recipe.aliases];
  const recipe = [...book.recipes.values()].find((r) =>
    names(r).some((name) => name.toLowerCase() === said.toLowerCase()),
  );
  if (!recipe) throw await unknownRecipe(book, said);
  return recipe;
}

/**
 * When no recipe was named: the one spoken of, unless the kind of piece says otherwise; then the recipe this kitchen
 * calls by that word alone ("bars").
 */
function recipeByPiece(asked: Asked): Recipe | undefined {
  const { book } = asked.kitchen;
  const before = book.recipes.get(asked.conversation.recipeId ?? '');
  const { unit: counted, portion_unit: each } = asked.slots;
  // "3 bars each for 20" counts people, and bars for each of them.
  const unit = [counted, each].find((word) => typeof word === 'string' && isPieceWord(asked, word));
  if (typeof unit !== 'string' || before?.pieceUnit === unit) return before;
  const match = findersOf(book).recipes.find(unit);
  return match.kind === 'found' ? match.recipe : undefined;
}

const isPieceWord = (asked: Asked, unit: string): boolean =>
  [...asked.kitchen.book.recipes.values()].some((recipe) => recipe.pieceUnit === unit);

/** Whether the words fitted more than one recipe. */
export const isSeveral = (meant: Recipe | readonly Recipe[] | undefined): meant is readonly Recipe[] =>
  Array.isArray(meant);

/** More than this is no short question on a phone. */
const MOST_LISTED = 8;

/** The recipes that make the kind of piece that was said, or all. */
function recipesOfPiece(asked: Asked): readonly Recipe[] {
  const all = [...asked.kitchen.book.recipes.values()];
  const fitting = all.filter((recipe) => recipe.pieceUnit === asked.slots.unit);
  return fitting.length > 0 ? fitting : all;
}

/** One short question, with the recipes it may be about. */
export function askWhichRecipe(
  asked: Asked,
  intent: Intent,
  title: string,
  recipes: readonly Recipe[] = recipesOfPiece(asked),
): Answered {
  const more = recipes.length - MOST_LISTED;
  return {
    answer: {
      title,
      sections: [
        { kind: 'list', items: recipes.slice(0, MOST_LISTED).map((r) => r.title) },
        ...(more > 0 ? [{ kind: 'text', text: `And ${more} more: type "recipes".` } as const] : []),
      ],
      cautions: [],
      next: recipes.slice(0, 3).map((r) => ({ label: r.title, says: r.title })),
      audience: 'asker',
      data: { asks: 'recipe' },
    },
    conversation: {
      ...asked.conversation,
      question: {
        slot: 'recipe',
        options: recipes.map((r) => r.id),
        reading: { intent, slots: asked.slots },
      },
    },
  };
}
