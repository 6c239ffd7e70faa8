import { placeName } from '../../kitchen/stock/places.ts';
import { placesInUse, readingGaps } from '../../kitchen/stock/reading-gaps.ts';
import { belowPar, type StockView, sumOf } from '../../kitchen/stock/view.ts';
import { dateOf, sayTime } from '../../kitchen/time/zone.ts';
import type { NextStep } from '../answer.ts';
import type { Asked } from '../command.ts';
import { namer, roomOf } from '../commands/remind/room.ts';
import { parText } from '../commands/stock/overview.ts';
import { opens } from '../forms/opens.ts';
import { holdingLine } from '../stock/words.ts';
import type { HomePart } from './home.ts';
import { heading, lines, words } from './parts.ts';

const DAY_MS = 24 * 3_600_000;
const MOST_OPEN = 5;

/** What needs doing now: what must go, what was told and nobody did, what was not measured, what is short. */
export async function toDo(asked: Asked, view: StockView): Promise<HomePart[]> {
  const open = await openReminders(asked);
  const missed = await missedToday(asked);
  const low = belowPar(view);
  const items = [
    ...view.mustGo.map((holding) => `Throw out: ${holdingLine(asked, holding)}`),
    ...view.held.map((holding) => `Serve none: ${holdingLine(asked, holding)}`),
    ...view.lastDayToday.map((holding) => `Last day today: ${holdingLine(asked, holding)}`),
    ...open.map(({ line }) => line),
    ...missed,
    ...(low.length > 0 ? [`Below par: ${low.map(parText).join(', ')}`] : []),
  ];
  const steps: NextStep[] = [
    ...(sumOf(view.mustGo) > 0
      ? [{ label: 'Log as thrown out', says: 'toss everything expired' } satisfies NextStep]
      : []),
    ...open.slice(0, 2).map(({ code }) => ({ label: `Done: ${code}`, says: `done ${code}` })),
    ...(missed.length > 0 ? [opens('Fill in readings', 'temperature log', 'reading')] : []),
  ];
  return [
    heading('To do now'),
    items.length > 0 ? lines(items) : words('Nothing waits.'),
    ...(steps.length > 0 ? [{ kind: 'steps' as const, steps }] : []),
  ];
}

async function openReminders(asked: Asked): Promise<{ code: string; line: string }[]> {
  const room = roomOf(asked);
  const open = await room.books.reminders.open(room.nowMs);
  if (open.length === 0) return [];
  const name = await namer(room);
  return open.slice(0, MOST_OPEN).map((reminder) => ({
    code: reminder.code,
    line: `${name(reminder)} (${reminder.code}): ${reminder.takenBy === undefined ? 'nobody has it yet' : 'somebody has it'}`,
  }));
}

/** Readings of today that were due and are not in the log. */
async function missedToday(asked: Asked): Promise<string[]> {
  const { kitchen, request } = asked;
  const { nowMs } = request;
  const { book } = kitchen;
  const today = dateOf(nowMs, book.settings.timeZone);
  const ledger = kitchen.ledgers(request.asker.workspace);
  const readings = await ledger.readings({ fromMs: nowMs - 2 * DAY_MS, toMs: nowMs + 1 });
  return readingGaps(book, readings, await placesInUse(ledger), nowMs - DAY_MS, nowMs)
    .filter(({ date }) => date === today)
    .map(({ location, time }) => `No ${sayTime(time)} reading of ${placeName(book, location)}`);
}
