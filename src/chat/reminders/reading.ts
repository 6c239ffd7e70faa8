import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import type { LoggedReading } from '../../kitchen/stock/ledger.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import { degrees } from '../commands/temperature/degrees.ts';
import { opens } from '../forms/opens.ts';
import { listed } from '../need-words.ts';
import { list, type Told, text } from './frame.ts';

/** A reading taken this shortly before counts for this round. */
const FRESH_MS = 2 * 3_600_000;
const LOOK_BACK_MS = 7 * 24 * 3_600_000;

/** The cold places that nobody has read this round, with their last reading. */
export async function reading({ state, ledger }: ComposingDesk): Promise<Told | undefined> {
  const { book, nowMs } = state;
  const { locations, timeZone } = book.settings;
  const taken = await ledger.readings({ fromMs: nowMs - LOOK_BACK_MS, toMs: nowMs });
  const last = new Map<string, LoggedReading>();
  for (const each of taken) {
    const before = last.get(each.location);
    if (!before || before.atMs <= each.atMs) last.set(each.location, each);
  }
  const open = locations.filter(
    ({ id, kind }) => kind !== 'room' && (last.get(id)?.atMs ?? 0) < nowMs - FRESH_MS,
  );
  const first = open[0];
  if (!first) return undefined;
  return {
    title: `Read the thermometers: ${listed(open.map(({ name }) => name))}.`,
    sections: [
      ...list(open.map(({ id, name }) => `${name}: ${lastOf(last.get(id), timeZone)}`)),
      text(`Write it like "${first.name.toLowerCase()} 38F".`),
    ],
    opens: [opens('Fill in readings', 'temperature log', 'reading')],
    data: { places: open.map(({ id }) => id) },
  };
}

function lastOf(reading: LoggedReading | undefined, zone: string): string {
  if (!reading) return 'no reading in the last week';
  return `last ${degrees(reading.tempF)}, ${sayInstant(reading.atMs, zone)}`;
}
