import type { PlannedVariant } from '../../../kitchen/production/production-plan.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import type { Book } from '../../../nutrition/book.ts';
import { unionOf } from '../../../nutrition/cover/profile.ts';
import { avoidWords } from '../roster/words.ts';
import { allergenLine } from '../scale/allergen-line.ts';
import { swapsText } from './variant-words.ts';

/** What goes on the wrapping of a variant, one line each; the day it is made is written by hand. */
export function labelOf(variant: PlannedVariant, book: Book): string[] {
  const { recipe, swaps, eaters } = variant;
  const useBy = variant.work?.useBy;
  const avoided = unionOf(eaters);
  const isForNeeds = avoided.avoid.length + avoided.foods.length > 0;
  return [
    swaps.length > 0 ? `${recipe.title}: ${swapsText(variant)}` : recipe.title,
    ...(isForNeeds ? [`No ${avoidWords(avoided).replaceAll(' and ', ' or ')} listed on its labels`] : []),
    allergenLine(recipe, book),
    `Made ______  by ______${useBy === undefined ? '' : `  use by ${sayDate(useBy)}`}`,
    recipe.storage === 'room' ? 'Keep dry and closed' : 'Keep cold: 41 °F (5 °C) or below',
    book.settings.name,
  ];
}
