import { type CalendarDate, sayDate, sayInstant } from '../../kitchen/time/zone.ts';
import type { WeekSummary } from '../../kitchen/week/week-summary.ts';
import type { Book } from '../../nutrition/book.ts';
import type { Section } from '../answer.ts';
import { listed } from '../need-words.ts';
import { list, type Told } from './frame.ts';

const MOST_GAPS = 8;

/** The week in figures, for Sunday evening and for whoever asks. */
export function weekTold(summary: WeekSummary, book: Book): Told {
  const { recipes, missedReadings, from, to } = summary;
  const total = (pick: 'made' | 'served' | 'tossed') => recipes.reduce((sum, each) => sum + each[pick], 0);
  const ranOut = recipes.filter((each) => each.ranOut).map((each) => each.title);
  return {
    title: `Week ${span(from, to)}: ${total('made')} made, ${total('served')} served, ${total('tossed')} thrown out.`,
    sections: [
      ...table(summary),
      ...list(ranOut.length > 0 ? [listed(ranOut)] : [], 'Ran out'),
      ...list(gaps(summary, book), `Readings missed: ${missedReadings.length}`),
    ],
    data: {
      from,
      to,
      made: total('made'),
      served: total('served'),
      tossed: total('tossed'),
      recipes,
      ranOut,
      missedReadings: missedReadings.length,
    },
  };
}

const span = (from: CalendarDate, to: CalendarDate): string => `${sayDate(from)} to ${sayDate(to)}`;

function table({ recipes }: WeekSummary): Section[] {
  if (recipes.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { name: 'Recipe', align: 'left' },
        { name: 'Made', align: 'right' },
        { name: 'Served', align: 'right' },
        { name: 'Tossed', align: 'right' },
      ],
      rows: recipes.map((each) => [each.title, `${each.made}`, `${each.served}`, `${each.tossed}`]),
    },
  ];
}

function gaps({ missedReadings }: WeekSummary, book: Book): string[] {
  const lines = missedReadings.map(({ location, dueMs }) => {
    const name = book.settings.locations.find(({ id }) => id === location)?.name ?? location;
    return `${name}, ${sayInstant(dueMs, book.settings.timeZone)}`;
  });
  if (lines.length <= MOST_GAPS) return lines;
  return [...lines.slice(0, MOST_GAPS), `and ${lines.length - MOST_GAPS} more`];
}
