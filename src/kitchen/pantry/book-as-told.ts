import type { AllergenMark } from '../../nutrition/allergens.ts';
import type { Book } from '../../nutrition/book.ts';
import type { Food } from '../../nutrition/food.ts';
import type { LabelNote, StatedPrice } from './pantry.ts';
import { sectionOf } from './section.ts';

/** What a label says beyond the book, and whether staff have read it through. */
export interface LabelStanding {
  readonly foodId: string;
  /** True until staff say that they have read the label. */
  readonly isOpen: boolean;
  readonly contains: readonly AllergenMark[];
  readonly advisory: readonly AllergenMark[];
}

/**
 * How each label stands after all that was told of it, oldest first. What was reported adds up: nothing but staff
 * who have read the label and say that it is as before takes it away.
 */
export function labelStandings(notes: readonly LabelNote[]): ReadonlyMap<string, LabelStanding> {
  const standings = new Map<string, LabelStanding>();
  for (const { foodId, state, contains, advisory } of notes) {
    if (state === 'as_before') {
      standings.delete(foodId);
      continue;
    }
    const before = standings.get(foodId);
    standings.set(foodId, {
      foodId,
      isOpen: state === 'changed',
      contains: [...(before?.contains ?? []), ...contains],
      advisory: [...(before?.advisory ?? []), ...advisory],
    });
  }
  return standings;
}

/** The book with what was told in chat laid over it: prices, and what changed labels name. */
export function bookAsTold(
  book: Book,
  labels: ReadonlyMap<string, LabelStanding>,
  prices: readonly StatedPrice[],
): Book {
  const foods = new Map(book.foods);
  for (const price of prices) {
    const food = foods.get(price.foodId);
    if (food) foods.set(food.id, withPrice(food, price));
  }
  for (const label of labels.values()) {
    const food = foods.get(label.foodId);
    if (food) foods.set(food.id, withLabel(food, label));
  }
  return { ...book, foods };
}

function withPrice(food: Food, { priceCents, packageG, packageName }: StatedPrice): Food {
  return { ...food, price: { priceCents, packageG, packageName, section: sectionOf(food) } };
}

function withLabel(food: Food, { contains, advisory }: LabelStanding): Food {
  const hasWheat = contains.some(({ allergen }) => allergen === 'wheat' || allergen === 'gluten_cereal');
  return {
    ...food,
    contains: [...food.contains, ...contains],
    advisory: [...food.advisory, ...advisory],
    ...(hasWheat ? { gluten: 'contains' as const } : {}),
    ...(contains.some(({ allergen }) => allergen === 'milk')
      ? { vegan: false, lactose: 'contains' as const }
      : {}),
    ...(contains.some(({ allergen }) => allergen === 'egg') ? { vegan: false } : {}),
  };
}
