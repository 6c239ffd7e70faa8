import { OWN_HELPS_MS, occurrence } from '../../../kitchen/reminders/planner/rules.ts';
import type { ReminderAudience } from '../../../kitchen/reminders/reminder.ts';
import type { NewReminder } from '../../../kitchen/reminders/reminder-book.ts';
import {
  addDays,
  type CalendarDate,
  dateOf,
  instantOf,
  sayTime,
  weekdayOf,
  zoneName,
} from '../../../kitchen/time/zone.ts';
import type { Answer } from '../../answer.ts';
import { listed } from '../../need-words.ts';
import { type BeforeGame, beforeGame } from './before-game.ts';
import type { Due } from './due.ts';
import { answerOf, dataOf, type Room, sayDue, saying } from './room.ts';

/** "in 20 min": of use for two hours after. Common practice, no source. */
const TIMER_HELPS_MS = 2 * 3_600_000;
const LONGEST_TASK = 200;
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
      about: { task, by: who, ...when.about },
      planned: when.about !== undefined,
      helpsUntilMs: when.helpsUntilMs,
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

type When = Pick<NewReminder, 'dueMs' | 'wall' | 'helpsUntilMs'> &
  Partial<Pick<BeforeGame, 'about' | 'note'>>;

async function instantFor(due: Exclude<Due, { kind: 'ask' | 'every' }>, room: Room): Promise<When> {
  const { zone } = room;
  if (due.kind === 'game') return beforeGame(due, room);
  if (due.kind === 'in') return { dueMs: due.dueMs, helpsUntilMs: due.dueMs + TIMER_HELPS_MS };
  const { date, time } = due;
  const dueMs = instantOf({ date, time }, zone);
  return { dueMs, helpsUntilMs: dueMs + OWN_HELPS_MS, wall: { date, time, zone } };
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
