import type { Slots } from '../../slots.ts';
import type { Atom, Moment } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { all } from './find.ts';

/** "sat 14:00", "every mon 09:00", "+20min": all moments of a message as one. */
export function whenText(moments: readonly Moment[], isPast = false): string | undefined {
  const offset = moments.find((moment) => moment.offset !== undefined)?.offset;
  // "mon 12/7": the date says which Monday.
  const dated =
    moments.find(({ day }) => day !== undefined && /^\d{4}-/.test(day)) ??
    moments.find(({ day }) => day !== undefined);
  const day = (isPast ? dated?.past : undefined) ?? dated?.day;
  const time = moments.find((moment) => moment.time !== undefined)?.time;
  const every = moments.some((moment) => moment.every);
  if (offset !== undefined) return time === undefined ? offset : `${offset} ${time}`;
  const parts = [
    ...(every ? ['every'] : []),
    ...(day === undefined ? [] : [day]),
    ...(time === undefined ? [] : [time]),
  ];
  return parts.length > 0 ? parts.join(' ') : undefined;
}

const momentsOf = (atoms: readonly Atom[]): Moment[] => atoms.flatMap((atom) => atom.moment ?? []);

export function when(lexed: Lexed): Slots {
  const moments = momentsOf(all(lexed, 'W'));
  const text = whenText(moments);
  if (text === undefined) return {};
  return { when: text, ...(moments.some((moment) => moment.unsure) ? { time_unsure: true } : {}) };
}

/** The moment something was done: a date without a year lies behind. */
export function doneWhen(lexed: Lexed): Slots {
  const { made, ...unsure } = madeWhen(lexed);
  return made === undefined ? {} : { when: made, ...unsure };
}

/** The same moment under the name `made`: when a batch was made. */
export function madeWhen(lexed: Lexed): Slots {
  const moments = momentsOf(all(lexed, 'W'));
  const text = whenText(moments, true);
  if (text === undefined) return {};
  return { made: text, ...(moments.some((moment) => moment.unsure) ? { time_unsure: true } : {}) };
}

/** Minutes of the first duration, "3 hours" is 180. */
export const durationMin = (atom: Atom | undefined): number | undefined =>
  atom?.value === undefined ? undefined : Math.round(atom.value);
