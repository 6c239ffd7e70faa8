import { gameName, sayWhen } from '../../../kitchen/games/say-game.ts';
import { OWN_HELPS_MS, occurrence } from '../../../kitchen/reminders/planner/rules.ts';
import type { ReminderAudience } from '../../../kitchen/reminders/reminder.ts';
import type { NewReminder } from '../../../kitchen/reminders/reminder-book.ts';
import {
  addDays,
  type CalendarDate,
  type ClockTime,
  dateOf,
  instantOf,
  sayTime,
  weekdayOf,
  zoneName,
} from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import { listed } from '../../need-words.ts';
import type { Due } from './due.ts';
import { answerOf, dataOf, type Room, sayDue, saying } from './room.ts';

/** "in 20 min": of use for two hours after. Common practice, no source. */
const TIMER_HELPS_MS = 2 * 3_600_000;
const LONGEST_TASK = 200;
const GAMES_AHEAD_DAYS = 60;
const NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

export interface Wish {
  readonly task: string;
  readonly audience: ReminderAudience;
  /** The asker said "me". */
  readonly forMe: boolean;
}

/** Writes a person's own reminder down and says when it comes, with date, time and zone. */
export async function setReminder(
  wish: Wish,
  due: Exclude<Due, { kind: 'ask' }>,
  room: Room,
): Promise<Answer> {
  const task = wish.task.slice(0, LONGEST_TASK);
  if (due.kind === 'every') return setRule({ ...wish, task }, due, room);
  const { books, nowMs, who } = room;
  const when = await instantFor(due, room);
  const written = await books.reminders.add(
    {
      key: keyOf(task, when.dueMs, room),
      kind: 'own',
      audience: wish.audience,
      about: { task, by: who },
      planned: false,
      helpsUntilMs: when.dueMs + (due.kind === 'in' ? TIMER_HELPS_MS : OWN_HELPS_MS),
      dueMs: when.dueMs,
      ...(when.wall ? { wall: when.wall } : {}),
    },
    nowMs,
  );
  return answerOf(`${written.code}: ${task}, ${sayDue(written, room)}.`, {
    sections: [{ kind: 'text', text: [toWhom(wish), when.note].filter(Boolean).join(' ') }],
    next: saying(`cancel ${written.code}`, 'reminders'),
    data: dataOf(written, room),
  });
}

/** The same request delivered twice makes one reminder; the same wish said twice makes two. */
function keyOf(task: string, dueMs: number, { asked }: Room): string {
  const { requestKey, conversation } = asked.request;
  return requestKey === undefined
    ? `own:${conversation}:${asked.request.nowMs}:${dueMs}:${task}`
    : `own:${requestKey}`;
}

function toWhom({ audience, forMe }: Wish): string {
  if (audience === 'dietitian') return 'It goes to the dietitian.';
  return forMe
    ? 'It goes to the kitchen, so that it is heard whoever is on shift.'
    : 'It goes to the kitchen.';
}

type When = Pick<NewReminder, 'dueMs' | 'wall'> & { readonly note?: string };

async function instantFor(due: Exclude<Due, { kind: 'ask' | 'every' }>, room: Room): Promise<When> {
  const { zone } = room;
  if (due.kind === 'in') return { dueMs: due.dueMs };
  if (due.kind === 'at') {
    const { date, time } = due;
    return { dueMs: instantOf({ date, time }, zone), wall: { date, time, zone } };
  }
  return beforeNextGame(due, room);
}

async function beforeNextGame(due: Extract<Due, { kind: 'game' }>, room: Room): Promise<When> {
  const { books, nowMs, zone, asked } = room;
  const today = dateOf(nowMs, zone);
  const games = await books.games.between(today, addDays(today, GAMES_AHEAD_DAYS));
  for (const game of games.filter(({ status }) => status === 'planned')) {
    const startMs = game.time && instantOf({ date: game.date, time: game.time }, game.timeZone);
    const time = due.time ?? (asked.kitchen.book.settings.prepTime as ClockTime);
    const wall = { date: addDays(game.date, -due.days), time, zone };
    const dueMs = due.minutes > 0 ? startMs && startMs - due.minutes * 60_000 : instantOf(wall, zone);
    if (dueMs === undefined || dueMs <= nowMs) continue;
    return {
      dueMs,
      ...(due.minutes > 0 ? {} : { wall }),
      note: `Before ${gameName(game)}, ${sayWhen(game)}. If the game moves, move this one too.`,
    };
  }
  throw new Problem(
    'not_found',
    'No game to come leaves time for that.',
    'Type "schedule" to see the games, or give a day and time.',
  );
}

async function setRule(wish: Wish, due: Extract<Due, { kind: 'every' }>, room: Room): Promise<Answer> {
  const { books, nowMs, zone, who } = room;
  const rules = await books.reminders.rules();
  const same = rules.find(
    (rule) =>
      rule.task === wish.task &&
      rule.time === due.time &&
      rule.weekdays.join() === due.weekdays.join() &&
      rule.audience === wish.audience,
  );
  const rule =
    same ??
    (await books.reminders.addRule(
      { task: wish.task, weekdays: due.weekdays, time: due.time, audience: wish.audience, madeBy: who },
      nowMs,
    ));
  const first = occurrence(rule, firstDate(due, nowMs, zone), zone);
  const written = await books.reminders.add(first, nowMs);
  return answerOf(
    `${written.code}: ${wish.task}, ${sayEvery(due.weekdays)} ${sayTime(due.time)} ${zoneName(written.dueMs, zone)}.`,
    {
      sections: [
        {
          kind: 'text',
          text: `${same ? 'It was set already. ' : ''}Next: ${sayDue(written, room)}. ${toWhom(wish)}`,
        },
      ],
      next: saying(`cancel ${written.code}`, 'reminders'),
      data: { ...dataOf(written, room), recurring: true, weekdays: due.weekdays, time: due.time },
    },
  );
}

function firstDate(
  { weekdays, time }: Extract<Due, { kind: 'every' }>,
  nowMs: number,
  zone: string,
): CalendarDate {
  let date = dateOf(nowMs, zone);
  while (!weekdays.includes(weekdayOf(date)) || instantOf({ date, time }, zone) <= nowMs)
    date = addDays(date, 1);
  return date;
}

/** "every day", "every Monday and Thursday". */
export function sayEvery(weekdays: readonly number[]): string {
  if (weekdays.length === 7) return 'every day';
  return `every ${listed(weekdays.map((weekday) => NAMES[weekday - 1] ?? ''))}`;
}
