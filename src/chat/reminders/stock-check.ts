import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import { stockView, sumOf } from '../../kitchen/stock/view.ts';
import { overview } from '../commands/stock/overview.ts';
import { askedByStaff } from './as-staff.ts';
import type { Told } from './frame.ts';

/** The morning check: what can be served and goes first, what must go, what is below par. */
export function stockCheck(desk: ComposingDesk): Told {
  const { book, nowMs, holdings } = desk.state;
  const view = stockView(holdings, book, nowMs);
  const { title, sections } = overview(askedByStaff(desk), view);
  return {
    title: `Stock check: ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
    sections,
    says: view.mustGo.length > 0 ? ['toss everything expired'] : ['stock'],
    data: {
      usablePieces: sumOf(view.usable),
      throwOutPieces: sumOf(view.mustGo),
      lastDayPieces: sumOf(view.lastDayToday) + sumOf(view.lastDayTomorrow),
    },
  };
}
