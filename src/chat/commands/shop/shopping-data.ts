import type { ListedItem } from '../../../kitchen/shopping/list-now.ts';
import { isWanted, type Shopping } from '../../../kitchen/shopping/shopping.ts';
import { tenth } from '../../pantry/amount.ts';

/** A shopping trip for machines: every line, bought or not. */
export function dataOf({ lines, others, cents, unpriced }: Shopping): Record<string, unknown> {
  return {
    totalCents: cents,
    isLowerBound: unpriced.length + others.length > 0,
    unpriced: unpriced.map(({ id }) => id),
    lines: lines.map((line) => ({
      food: line.food.id,
      section: line.section,
      neededG: tenth(line.neededG),
      onHandG: line.onHandG === undefined ? null : tenth(line.onHandG),
      pastDateG: tenth(line.pastDateG),
      listed: line.listed ? itemData(line.listed) : null,
      toBuyG: tenth(line.toBuyG),
      isWanted: isWanted(line),
      packages: line.packages?.count ?? null,
      packageG: line.packages?.packageG ?? null,
      packageName: line.packages?.packageName ?? null,
      cents: line.packages?.cents ?? null,
    })),
    others: others.map(itemData),
  };
}

/** Something on the list by hand, for machines. */
export const itemData = ({ name, foodId, massG, added }: ListedItem): Record<string, unknown> => ({
  name,
  food: foodId ?? null,
  massG: massG === undefined ? null : tenth(massG),
  added,
});
