import type { Book } from '../../nutrition/book.ts';
import type { Batch, LedgerWriter, Opening } from '../stock/ledger.ts';
import type { PantryHeld, PantryMovement } from './pantry.ts';

/** Of one food: what a batch took, and what the shelf had less of than the batch needed. */
export interface PantryUse {
  readonly foodId: string;
  readonly usedG: number;
  readonly leftG: number;
  /** More went in than the pantry knew of; 0 when it had enough. */
  readonly shortG: number;
}

/** Below this an amount is weighing noise, not a shortage. */
const NOISE_G = 0.5;

/**
 * Takes grams of a food from the lots on the shelf: a lot that was named first, then in the order of `held`. Never more
 * than is there.
 */
export function takeFrom(
  held: readonly PantryHeld[],
  foodId: string,
  massG: number,
  lot?: string,
): { readonly movements: readonly PantryMovement[]; readonly takenG: number } {
  const isNamed = (each: PantryHeld): boolean => each.lot?.toLowerCase() === lot?.toLowerCase();
  const own = held.filter((each) => each.foodId === foodId);
  const ordered = lot === undefined ? own : [...own.filter(isNamed), ...own.filter((each) => !isNamed(each))];
  const movements: PantryMovement[] = [];
  let takenG = 0;
  for (const each of ordered) {
    const part = Math.min(each.massG, massG - takenG);
    if (part <= 0) break;
    takenG += part;
    movements.push({ foodId, massG: -part, ...(each.lot === undefined ? {} : { lot: each.lot }) });
  }
  return { movements, takenG };
}

/**
 * What batches take from the pantry. Only foods the pantry has known are taken; a kitchen that logs no deliveries of
 * oats is not told every day that oats are short.
 */
export async function usedByBatches(
  ledger: LedgerWriter,
  book: Book,
  batches: readonly Batch[],
): Promise<{ readonly movements: readonly PantryMovement[]; readonly uses: readonly PantryUse[] }> {
  const known = await ledger.pantryFoods();
  if (known.size === 0) return { movements: [], uses: [] };
  let held = openFirst(await ledger.pantry(), await ledger.openings([...known]));
  const movements: PantryMovement[] = [];
  const needG = new Map<string, number>();
  for (const { facts, lots } of batches) {
    for (const { foodId, massG } of facts.ingredients) {
      if (!known.has(foodId) || !book.foods.has(foodId)) continue;
      needG.set(foodId, (needG.get(foodId) ?? 0) + massG);
      const taken = takeFrom(held, foodId, massG, lots.find((lot) => lot.foodId === foodId)?.lot);
      movements.push(...taken.movements);
      held = without(held, taken.movements);
    }
  }
  const uses = [...needG].map(([foodId, neededG]): PantryUse => {
    const usedG = -sumG(movements.filter((movement) => movement.foodId === foodId));
    const shortG = neededG - usedG;
    const leftG = sumG(held.filter((each) => each.foodId === foodId));
    return { foodId, usedG, leftG, shortG: shortG > NOISE_G ? shortG : 0 };
  });
  return { movements, uses };
}

/** What is open is used before what is not, the package opened first on top; the rest as it came. */
function openFirst(
  held: readonly PantryHeld[],
  openings: readonly (Opening & { readonly atMs: number })[],
): readonly PantryHeld[] {
  const openedMs = ({ foodId, lot }: PantryHeld): number =>
    openings.find(
      (opening) =>
        opening.foodId === foodId &&
        opening.lot !== undefined &&
        opening.lot.toLowerCase() === lot?.toLowerCase(),
    )?.atMs ?? Number.POSITIVE_INFINITY;
  return held
    .map((each) => ({ each, ms: openedMs(each) }))
    .sort((a, b) => (a.ms === b.ms ? 0 : a.ms - b.ms))
    .map(({ each }) => each);
}

export const sumG = (rows: readonly { readonly massG: number }[]): number =>
  rows.reduce((sum, { massG }) => sum + massG, 0);

/** What is on the shelf after some was taken. */
export function without(
  held: readonly PantryHeld[],
  movements: readonly PantryMovement[],
): readonly PantryHeld[] {
  return held
    .map((each) => ({
      ...each,
      massG:
        each.massG +
        sumG(movements.filter((m) => m.foodId === each.foodId && (m.lot ?? '') === (each.lot ?? ''))),
    }))
    .filter(({ massG }) => massG > 0);
}
