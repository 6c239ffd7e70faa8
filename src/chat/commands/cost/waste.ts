import { spentBetween, startOf } from '../../../kitchen/pantry/spending.ts';
import { wasteBetween } from '../../../kitchen/pantry/waste.ts';
import {
  addDays,
  type CalendarDate,
  clockTime,
  dateOf,
  instantOf,
  sayDate,
} from '../../../kitchen/time/zone.ts';
import type { Answered, Asked } from '../../command.ts';
import { atLeast, unpricedLine } from '../../money.ts';
import { openedSections, wasteLine } from '../../pantry/waste-lines.ts';
import { deskOf } from '../../stock/desk.ts';
import { pastDay } from '../../stock/when.ts';

/** What was thrown out in a week, month or on a day, and what lies open past its date, in money. */
export async function wasteAnswer(asked: Asked): Promise<Answered> {
  const { book } = asked.kitchen;
  const { ledger, nowMs } = deskOf(asked);
  const { from, to } = spanBack(asked);
  const at = (date: CalendarDate) => instantOf({ date, time: clockTime('00:00') }, book.settings.timeZone);
  const toMs = Math.min(at(addDays(to, 1)), nowMs + 1);
  const waste = await wasteBetween(ledger, book, at(from), toMs, nowMs);
  const { spentCents } = await spentBetween(ledger, book, at(from), toMs);
  const unpriced = [
    ...new Set([...waste.tossed, ...waste.pastDate, ...waste.endsSoon].flatMap((line) => line.unpriced)),
  ];
  const missing = unpricedLine(unpriced);
  const share =
    spentCents > 0 ? `, ${Math.round((waste.tossedCents / spentCents) * 100)} % of what was spent` : '';
  return {
    answer: {
      title: `${atLeast(
        waste.tossedCents,
        waste.tossed.flatMap((line) => line.unpriced),
      )} thrown out, ${sayDate(from)} to ${sayDate(to)}${share}.`,
      sections: [
        ...(waste.tossed.length > 0 ? [{ kind: 'list' as const, items: waste.tossed.map(wasteLine) }] : []),
        ...openedSections(waste),
        ...(missing === undefined ? [] : [{ kind: 'text' as const, text: missing }]),
        { kind: 'text', text: "At today's prices of what went in; labor is not counted." },
      ],
      cautions: [],
      next: ['week summary', 'what expires tomorrow'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        from,
        to,
        tossedCents: waste.tossedCents,
        pastDateCents: waste.pastDateCents,
        endsSoonCents: waste.endsSoonCents,
        tossed: waste.tossed,
        pastDate: waste.pastDate,
        endsSoon: waste.endsSoon,
        spentCents,
      },
    },
  };
}

/** Days looked back over: this week unless a month or a day was said. */
function spanBack(asked: Asked): { from: CalendarDate; to: CalendarDate } {
  const { when } = asked.slots;
  const today = dateOf(asked.request.nowMs, asked.kitchen.book.settings.timeZone);
  if (when === 'month') return { from: startOf('month', today), to: today };
  if (when === 'last month') {
    const to = addDays(startOf('month', today), -1);
    return { from: startOf('month', to), to };
  }
  const monday = startOf('week', today);
  if (when === 'last week') return { from: addDays(monday, -7), to: addDays(monday, -1) };
  const day = pastDay(asked, when);
  return day === undefined ? { from: monday, to: today } : { from: day, to: day };
}
