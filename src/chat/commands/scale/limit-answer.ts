import { Problem } from '../../../nutrition/problem.ts';
import { scaleRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { batchText, gramsText, weightText } from './batch-words.ts';
import { available } from './target-of.ts';

const MOST_ROWS = 8;

/** "What can I make with 2 jars of peanut butter": every recipe that uses it, and how far it goes. */
export async function limitAnswer(asked: Asked): Promise<Answer> {
  const { book } = asked.kitchen;
  const food = await findFood(book, asked.slots.ingredient ?? '');
  const { massG: availableG, assumed } = available(food, asked.slots);
  const rows = [...book.recipes.values()].flatMap((recipe) => {
    if (!recipe.lines.some((line) => line.foodId === food.id)) return [];
    try {
      const target = { kind: 'ingredient', foodId: food.id, availableG } as const;
      const { pieces, ingredientLeftG } = scaleRecipe(recipe, book.foods, target);
      return [{ recipe, pieces, leftG: ingredientLeftG ?? 0 }];
    } catch (error) {
      if (error instanceof Problem) return [];
      throw error;
    }
  });
  if (rows.length === 0) {
    throw new Problem(
      'not_possible',
      `No recipe here makes anything of ${weightText(availableG)} ${food.name}.`,
      'Type "recipes" for the list.',
    );
  }
  rows.sort((a, b) => b.pieces - a.pieces);
  const [most] = rows;
  const best = most ? batchText(most.pieces, most.recipe.pieceUnit, most.recipe.title) : '';
  return {
    title: `${best} at most, from ${weightText(availableG)} ${food.name}`,
    sections: [
      {
        kind: 'table',
        columns: [
          { name: 'Recipe', align: 'left' },
          { name: 'Pieces', align: 'right' },
          { name: 'Left, g', align: 'right' },
        ],
        rows: rows
          .slice(0, MOST_ROWS)
          .map((row) => [row.recipe.title, String(row.pieces), gramsText(row.leftG)]),
      },
      {
        kind: 'text',
        text: `${assumed ? `${assumed} ` : ''}Only ${food.name} was counted; check that the rest is there.`,
      },
    ],
    cautions: [],
    next: rows
      .slice(0, 3)
      .map(({ recipe, pieces }) => ({ label: recipe.title, says: `${pieces} ${recipe.title}` })),
    audience: 'channel',
    data: {
      ingredient: food.id,
      availableG,
      recipes: rows.map(({ recipe, pieces, leftG }) => ({
        recipe: recipe.id,
        pieces,
        leftG: Math.round(leftG * 10) / 10,
      })),
    },
  };
}
