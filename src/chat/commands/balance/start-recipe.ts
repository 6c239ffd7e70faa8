import type { Need } from '../../../nutrition/allergens.ts';
import type { Book } from '../../../nutrition/book.ts';
import { recipeVerdict } from '../../../nutrition/meets-needs.ts';
import { massOf } from '../../../nutrition/portion/mass-of.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe, RecipeLine } from '../../../nutrition/recipe.ts';
import { findSwaps } from '../../../nutrition/swap/find-swaps.ts';
import type { SwapOffer } from '../../../nutrition/swap/offer.ts';
import { freeWords, listed } from '../../need-words.ts';

/** What the balancing starts from: the recipe, with its best swap where something has to be avoided. */
export interface Start {
  readonly recipe: Recipe;
  readonly offer?: SwapOffer;
}

/** The recipe clear of the needs, by labels and kinds. Throws `not_possible` when nothing can stand in. */
export function startRecipe(recipe: Recipe, book: Book, needs: readonly Need[]): Start {
  const { foods, recipes, settings } = book;
  if (needs.length === 0 || recipeVerdict(recipe, foods, needs) === 'clear_by_label') return { recipe };
  const { offers, blocked } = findSwaps({ recipe, foods, recipes, needs, list: settings.allergenList });
  const [offer] = offers;
  if (offer) return { recipe: inKitchenUnits(recipe, offer, book), offer };
  const names = listed(blocked.map(({ food }) => food.name));
  throw new Problem(
    'not_possible',
    `I know no ${freeWords(needs)} version of ${recipe.title}${names === '' ? '' : `: nothing here stands in for ${names}`}.`,
    `Ask "${freeWords(needs)} recipes" for what meets it as it is.`,
  );
}

/** A swap is worked out in grams; where the new food has the old line's measure, it is measured that way again. */
function inKitchenUnits(recipe: Recipe, offer: SwapOffer, book: Book): Recipe {
  const written = new Map(
    offer.swaps.flatMap((swap) => {
      const was = recipe.lines[swap.lineIndex];
      return swap.to && was ? [[swap.to.id, was] as const] : [];
    }),
  );
  const lines = offer.recipe.lines.map((line) => {
    const was = written.get(line.foodId);
    const unchanged = recipe.lines.includes(line);
    return was && !unchanged ? inUnitOf(was, line, book) : line;
  });
  return { ...offer.recipe, lines };
}

function inUnitOf(was: RecipeLine, line: RecipeLine, book: Book): RecipeLine {
  const food = book.foods.get(line.foodId);
  try {
    const gEach = food ? massOf(food, 1, was.unit).massG : 0;
    if (!(gEach > 0)) return line;
    const thousandths = Math.round((line.massG / gEach) * 1000);
    if (thousandths === 0) return line;
    return {
      ...line,
      unit: was.unit,
      amount: { numerator: thousandths, denominator: 1000 },
      massG: (thousandths / 1000) * gEach,
      measuredBy: was.measuredBy,
    };
  } catch (error) {
    // The new food has no such measure: it is weighed.
    if (error instanceof Problem) return line;
    throw error;
  }
}
