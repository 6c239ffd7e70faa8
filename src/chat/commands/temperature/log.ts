import type { LoggedReading } from '../../../kitchen/stock/ledger.ts';
import { placeName, placesCalled } from '../../../kitchen/stock/places.ts';
import { placesInUse, type ReadingGap, readingGaps } from '../../../kitchen/stock/reading-gaps.ts';
import { COLD_LIMIT_F, celsiusOf } from '../../../kitchen/stock/temperature.ts';
import {
  addDays,
  type CalendarDate,
  clockTime,
  dateOf,
  instantOf,
  sayDate,
  sayTime,
  wallTimeOf,
  weekdayOf,
  zoneName,
} from '../../../kitchen/time/zone.ts';
import type { Attachment } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { opens } from '../../forms/opens.ts';
import { listed } from '../../need-words.ts';
import { deskOf } from '../../stock/desk.ts';
import { pastDay } from '../../stock/when.ts';
import { clockText } from '../../stock/words.ts';
import { degrees } from './degrees.ts';

const SHOWN = 8;

/** The log of readings with its gaps, and as a file an inspector can read. */
export async function temperatureLog(asked: Asked): Promise<Answered> {
  const { book } = asked.kitchen;
  const desk = deskOf(asked);
  const { from, fromMs, toMs } = spanOf(asked);
  const { location } = asked.slots;
  const ids = typeof location === 'string' ? placesCalled(book, location).map(({ id }) => id) : undefined;
  const all = await desk.ledger.readings({ fromMs, toMs });
  const readings = all.filter((reading) => ids === undefined || ids.includes(reading.location));
  const used = new Map(
    [...(await placesInUse(desk.ledger))].filter(([id]) => ids === undefined || ids.includes(id)),
  );
  const gaps = readingGaps(book, readings, used, fromMs, Math.min(toMs, desk.nowMs));
  const warm = readings.filter(
    ({ tempF, location: id }) => tempF > COLD_LIMIT_F && isPlace(asked, id),
  ).length;
  const latest = readings.slice(-SHOWN).reverse();
  return {
    answer: {
      title: `${readings.length} readings since ${sayDate(from)}: ${warm} above 41 °F, ${gaps.length} missed.`,
      sections: [
        ...(readings.length > 0
          ? [
              {
                kind: 'list' as const,
                heading: readings.length > SHOWN ? `Last ${SHOWN}` : 'Readings',
                items: latest.map((reading) => line(asked, reading)),
              },
            ]
          : [{ kind: 'text' as const, text: noReading(used.size > 0) }]),
        ...(gaps.length > 0
          ? [
              {
                kind: 'list' as const,
                heading: 'Missed',
                items: missedLines(asked, gaps),
              },
            ]
          : []),
      ],
      cautions: [],
      next: [
        opens('Log readings', 'fridge a 38F', 'reading'),
        { label: 'week summary', says: 'week summary' },
      ],
      attachments: [await logFile(asked, readings, from)],
      audience: 'channel',
      data: {
        from,
        readings: readings.map((reading) => ({ ...reading })),
        missed: gaps,
      },
    },
  };
}

/** The latest first, the places of one time in one line. */
function missedLines({ kitchen: { book } }: Asked, gaps: readonly ReadingGap[]): string[] {
  const byTime = new Map<string, { readonly gap: ReadingGap; readonly places: string[] }>();
  for (const gap of gaps) {
    const key = `${gap.date} ${gap.time}`;
    const same = byTime.get(key) ?? { gap, places: [] };
    same.places.push(placeName(book, gap.location));
    byTime.set(key, same);
  }
  const latest = [...byTime].sort(([a], [b]) => (a < b ? 1 : -1)).map(([, missed]) => missed);
  const earlier = latest.slice(SHOWN).reduce((sum, { places }) => sum + places.length, 0);
  return [
    ...latest
      .slice(0, SHOWN)
      .map(({ gap, places }) => `${sayDate(gap.date)}, ${sayTime(gap.time)}: ${listed(places)}`),
    ...(earlier > 0 ? [`and ${earlier} earlier`] : []),
  ];
}

const noReading = (isInUse: boolean): string =>
  isInUse
    ? 'No reading is logged in this time.'
    : 'No reading was ever logged here, and no food stands in a fridge or freezer by the stock: nothing counts as missed yet.';

const isPlace = ({ kitchen }: Asked, id: string): boolean =>
  kitchen.book.settings.locations.some((place) => place.id === id && place.kind !== 'room');

/** This week unless told: seven days back; a day, "week", "last week", "month". */
function spanOf(asked: Asked): { from: CalendarDate; fromMs: number; toMs: number } {
  const { timeZone } = asked.kitchen.book.settings;
  const { nowMs } = asked.request;
  const today = dateOf(nowMs, timeZone);
  const monday = addDays(today, 1 - weekdayOf(today));
  const { when } = asked.slots;
  const startOf = (date: CalendarDate) => instantOf({ date, time: clockTime('00:00') }, timeZone);
  const until = (from: CalendarDate, to?: CalendarDate) => ({
    from,
    fromMs: startOf(from),
    toMs: to ? startOf(to) : nowMs + 1,
  });
  if (when === 'last week') return until(addDays(monday, -7), monday);
  if (when === 'week') return until(monday);
  if (when === 'month' || when === 'last month') return until(addDays(today, -31));
  const day = pastDay(asked, when);
  return day === undefined ? until(addDays(today, -6)) : until(day, addDays(day, 1));
}

function line(asked: Asked, reading: LoggedReading): string {
  const what = reading.action === undefined ? '' : `: ${reading.action}`;
  return `${clockText(asked, reading.atMs)}, ${placeName(asked.kitchen.book, reading.location)}, ${degrees(reading.tempF)}, ${reading.who}${what}`;
}

/** CSV with what an inspector asks for: time, reading, who, and what was done. */
async function logFile(
  asked: Asked,
  readings: readonly LoggedReading[],
  from: CalendarDate,
): Promise<Attachment> {
  const { stringify } = await import('csv-stringify/sync');
  const { book } = asked.kitchen;
  const { timeZone } = book.settings;
  const rows = readings.map((reading) => {
    const wall = wallTimeOf(reading.atMs, timeZone);
    return {
      date: wall.date,
      time: wall.time,
      zone: zoneName(reading.atMs, timeZone),
      place: placeName(book, reading.location),
      reading_f: Math.round(reading.tempF * 10) / 10,
      reading_c: Math.round(celsiusOf(reading.tempF) * 10) / 10,
      above_41f: isPlace(asked, reading.location) && reading.tempF > COLD_LIMIT_F ? 'yes' : 'no',
      who: reading.who,
      action: reading.action ?? '',
    };
  });
  const columns = ['date', 'time', 'zone', 'place', 'reading_f', 'reading_c', 'above_41f', 'who', 'action'];
  return {
    fileName: `temperature-log-${from}.csv`,
    mediaType: 'text/csv',
    // A cell that a spreadsheet would run as a formula is kept as text.
    content: stringify(rows, { header: true, columns, escape_formulas: true }),
  };
}
