import type { Eaters } from '../../../kitchen/production/eaters.ts';
import type { PlannedVariant } from '../../../kitchen/production/production-plan.ts';
import { listed } from '../../need-words.ts';
import { avoidWords } from '../roster/words.ts';

/** "sunflower butter for peanut butter, no honey". */
export const swapsText = ({ swaps }: Pick<PlannedVariant, 'swaps'>): string =>
  listed(
    swaps.map(({ from, to }) =>
      to ? `${lower(to.name)} for ${lower(from.name)}` : `no ${lower(from.name)}`,
    ),
  );

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

/** "Oat bars A": a letter tells the variants of one card apart. */
export function variantNames(variants: readonly PlannedVariant[]): string[] {
  return variants.map(({ recipe, swaps }, at) => {
    const isAlone = variants.filter(({ recipe: other }) => other.id === recipe.id).length === 1;
    const letter = isAlone ? '' : ` ${String.fromCharCode(65 + at)}`;
    return `${recipe.title}${letter}${swaps.length > 0 ? ' (swapped)' : ''}`;
  });
}

/** "5 avoiding peanut and tree nuts", "37 without needs". */
export const eatersText = (eaters: Eaters): string =>
  eaters.avoid.length + eaters.foods.length > 0
    ? `${eaters.people} avoiding ${avoidWords(eaters)}`
    : `${eaters.people} without needs`;
