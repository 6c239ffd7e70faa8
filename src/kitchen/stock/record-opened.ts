import type { Food } from '../../nutrition/food.ts';
import { type CalendarDate, dateOf } from '../time/zone.ts';
import { lastDay, MOST_DAYS } from './date-mark.ts';
import { checkWhen, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Opening } from './ledger.ts';

export interface Opened extends Doing {
  readonly food: Food;
  readonly lot?: string;
  /** The maker's own date on the package; the mark never runs past it (3-501.17(B)(2)). */
  readonly makersUseBy?: CalendarDate;
}

/** Commercially made cultured dairy follows its maker's date and needs no mark of its own (3-501.17 exemptions). */
const EXEMPT = /\b(?:yogurt|sour cream|buttermilk)\b/i;

/** Foods that are kept cold once open carry a date mark; a dry package carries none. */
export const isDateMarked = (food: Food): boolean =>
  (food.storage === 'cold' || food.storage === 'cold_once_opened') && !EXEMPT.test(food.name);

/**
 * Records that a package was opened. Its mark is the day opened as day 1 (3-501.17(B)), at most 7 days, not past the
 * maker's own date; it governs what is mixed from it.
 */
export async function recordOpened(
  desk: Desk,
  opened: Opened,
): Promise<Opening & { readonly again: boolean }> {
  const atMs = checkWhen(opened.atMs, desk.nowMs);
  const openedDate = dateOf(atMs, desk.book.settings.timeZone);
  const { food, lot } = opened;
  const printed = opened.makersUseBy ?? printedUseBy(food, lot);
  const marks = printed === undefined ? [] : [printed];
  const days = Math.min(desk.book.settings.mostDays, MOST_DAYS);
  const useBy = isDateMarked(food) ? lastDay(openedDate, days, marks) : printed;
  const opening: Opening = {
    foodId: food.id,
    openedDate,
    ...(lot === undefined ? {} : { lot }),
    ...(useBy === undefined ? {} : { useBy }),
  };
  return desk.ledger.write(async (ledger) => {
    if (await recordedBefore(ledger, opened.requestKey)) return { ...opening, again: true };
    await ledger.append({
      event: eventOf(ledger, desk, 'opened', { ...opened, atMs }),
      openings: [opening],
    });
    return { ...opening, again: false };
  });
}

function printedUseBy(food: Food, lot: string | undefined): CalendarDate | undefined {
  const found = food.product?.lots.find((each) => each.lot.toLowerCase() === lot?.toLowerCase());
  return found?.useBy as CalendarDate | undefined;
}
