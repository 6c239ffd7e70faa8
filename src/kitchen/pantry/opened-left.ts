import type { Book } from '../../nutrition/book.ts';
import type { LedgerView, Opening } from '../stock/ledger.ts';
import { sumG } from './uses.ts';

/** An opened package of which something may still be on the shelf. */
export interface OpenedLeft extends Opening {
  /** At most this: what the package held, less what has left the shelf since it was opened. */
  readonly massG: number;
}

/**
 * What is left at most of each package that was opened. What leaves the shelf is taken from the open package first, so
 * that one used up long ago says nothing of the ones that came after it.
 */
export async function openedLeft(ledger: LedgerView, book: Book): Promise<readonly OpenedLeft[]> {
  const held = await ledger.pantry();
  const openings = await ledger.openings([...new Set(held.map(({ foodId }) => foodId))]);
  const left: OpenedLeft[] = [];
  for (const { atMs, ...opening } of openings) {
    const { foodId, lot } = opening;
    const isOfIt = (each: { foodId: string; lot?: string }) =>
      each.foodId === foodId && (lot === undefined || each.lot?.toLowerCase() === lot.toLowerCase());
    const nowG = sumG(held.filter(isOfIt));
    const since = (await ledger.pantryMoved({ foodId, afterMs: atMs })).filter(isOfIt);
    const outG = -sumG(since.filter(({ massG }) => massG < 0));
    const inG = sumG(since.filter(({ massG }) => massG > 0));
    const thereG = nowG - inG + outG;
    const packageG = Math.min(book.foods.get(foodId)?.price?.packageG ?? thereG, thereG);
    const massG = Math.min(nowG, packageG - outG);
    if (massG > 0.0005) left.push({ ...opening, massG });
  }
  return left;
}
