import { Problem } from '../../../nutrition/problem.ts';
import { addDays, dateOf } from '../../time/zone.ts';
import { DAYS_AHEAD, DAYS_BACK } from './limits.ts';
import { instanceKey, type Placed, type Places, place } from './moment.ts';
import type { ReadEvent } from './read-event.ts';
import type { CalendarContext, ToldGame } from './reading.ts';
import { expandRule } from './recurrence.ts';
import { sportIn } from './sports.ts';
import { startOfEvent } from './start-time.ts';
import { readTitle, saysTimeTba } from './title.ts';

export interface Setting {
  readonly context: CalendarContext;
  readonly places: Places;
  readonly calendarName?: string;
  /** METHOD:CANCEL: everything in the file is off. */
  readonly allCancelled: boolean;
  /** Instances that have an event of their own, by UID and instance. */
  readonly overridden: ReadonlySet<string>;
  readonly stepsLeft: number;
}

export interface EventGames {
  readonly games: readonly ToldGame[];
  readonly notes: readonly string[];
  readonly steps: number;
  /** Told apart from games: practice, meetings. */
  readonly isNoGame: boolean;
  /** How the expansion of its rule ended. */
  readonly end: 'whole' | 'cut' | 'gave_up';
}

/** The games one event stands for: one, or the instances of its rule without those that are told apart. */
export function gamesOfEvent(event: ReadEvent, setting: Setting): EventGames {
  const { context, places } = setting;
  const title = readTitle(event.summary || event.description.split('\n')[0] || 'Game', context.team);
  if (title.isNoGame) return { games: [], notes: [], steps: 0, isNoGame: true, end: 'whole' };
  const saysTba =
    title.timeNotAnnounced || saysTimeTba(event.description) || saysTimeTba(event.location ?? '');
  const { start, note } = startOfEvent(event, saysTba, places);
  const sport =
    title.sport ??
    sportIn(event.categories) ??
    sportIn(setting.calendarName ?? '') ??
    sportIn(context.source.replace(/.*\//, ''));
  const base = {
    uid: event.uid || `${start.date} ${title.title}`.toLowerCase(),
    sequence: event.sequence,
    ...(event.stampMs === undefined ? {} : { stampMs: event.stampMs }),
    title: title.title,
    ...(sport === undefined ? {} : { sport }),
    ...(title.opponent === undefined ? {} : { opponent: title.opponent }),
    ...(title.side === undefined ? {} : { side: title.side }),
    ...(event.location ? { place: event.location.replace(/\s+/g, ' ').slice(0, 200) } : {}),
    status: event.isCancelled || title.isCancelled || setting.allCancelled ? 'cancelled' : 'planned',
  } as const;
  const notes = note === undefined ? [] : [`${title.title}: ${note}.`];
  if (!event.rule && event.extra.length === 0) {
    const recurrenceId = event.recurrence && instanceKey(event.recurrence, places);
    const game = { ...base, ...whenOf(start), ...(recurrenceId === undefined ? {} : { recurrenceId }) };
    return { games: [game], notes, steps: 0, isNoGame: false, end: 'whole' };
  }
  const { instances, steps, end } = instancesOf(event, start, setting);
  const games = instances.map((instance) => ({
    ...base,
    ...whenOf(instance),
    recurrenceId: keyOf(instance),
  }));
  return { games, notes, steps, isNoGame: false, end };

  function keyOf(instance: Placed): string {
    const { date, time, timeZone } = instance;
    return instanceKey({ date, ...(time === undefined ? {} : { time, zone: { tzid: timeZone } }) }, places);
  }
}

const whenOf = ({ date, time, timeZone }: Placed) => ({
  date,
  ...(time === undefined ? {} : { time }),
  timeZone,
});

function instancesOf(event: ReadEvent, start: Placed, setting: Setting) {
  const { places, context, overridden, stepsLeft } = setting;
  const today = dateOf(context.nowMs, places.kitchenZone);
  const horizon = { from: addDays(today, -DAYS_BACK), to: addDays(today, DAYS_AHEAD) };
  if (stepsLeft <= 0)
    throw new Problem('bad_file', 'the rules of this file repeat too often.', 'Export one season.');
  const expanded = event.rule
    ? expandRule(event.rule, start, horizon, stepsLeft)
    : { instances: [start], steps: 0, end: 'whole' as const };
  const extra = event.extra.map((stamp) => place(stamp, places));
  const exceptKeys = new Set(event.except.map((stamp) => instanceKey(stamp, places)));
  const exceptDays = new Set(event.except.filter(({ time }) => time === undefined).map(({ date }) => date));
  const seen = new Set<string>();
  const instances = [...expanded.instances, ...extra].filter((instance) => {
    const { date, time, timeZone } = instance;
    const key = instanceKey(
      { date, ...(time === undefined ? {} : { time, zone: { tzid: timeZone } }) },
      places,
    );
    if (seen.has(key) || exceptKeys.has(key) || exceptDays.has(date)) return false;
    seen.add(key);
    return !overridden.has(`${event.uid}\n${key}`);
  });
  return { instances, steps: expanded.steps, end: expanded.end };
}
