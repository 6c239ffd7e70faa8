import type { Book } from '../nutrition/book.ts';
import { createFoodIndex } from '../nutrition/find-food.ts';
import { createRecipeIndex, type RecipeIndex } from '../nutrition/find-recipe.ts';
import type { FoodFinder } from '../nutrition/ingredient-list.ts';

/** How words become this book's recipes and foods. */
export interface Finders {
  readonly foods: FoodFinder;
  readonly recipes: RecipeIndex;
}

const byBook = new WeakMap<Book, Finders>();

/** The finders of a book, made once per book. */
export function findersOf(book: Book): Finders {
  const ready = byBook.get(book);
  if (ready) return ready;
  const made = {
    foods: createFoodIndex(book.foods.values()),
    recipes: createRecipeIndex(book.recipes.values()),
  };
  byBook.set(book, made);
  return made;
}
