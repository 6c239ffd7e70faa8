import { leadOf } from '../../../kitchen/reminders/game-lead.ts';
import type { Reminder } from '../../../kitchen/reminders/reminder.ts';
import type { NewTime } from '../../../kitchen/reminders/reminder-book.ts';
import { instantOf } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import { doneStep, snoozeStep } from '../../reminders/frame.ts';
import type { Due } from './due.ts';
import { answerOf, dataOf, namer, type Room, sayDue, saying } from './room.ts';
import { sayEvery } from './set.ts';

/** "I've got it": the reminder and, when it repeats another, that one too. */
export async function take(reminder: Reminder, room: Room): Promise<Answer> {
  const name = await namer(room);
  if (reminder.doneMs !== undefined) return doneBefore(reminder, name(reminder), room);
  const both = await withRepeated(reminder, room);
  const taken = await Promise.all(both.map((each) => room.books.reminders.take(each.id, room.who)));
  if (taken.includes(false)) {
    const holder = both.find(({ takenBy }) => takenBy !== undefined && takenBy !== room.who)?.takenBy;
    throw new Problem(
      'not_possible',
      `${holder ?? 'Somebody else'} has ${reminder.code} already.`,
      `Say "done ${reminder.code}" when it is done.`,
    );
  }
  return answerOf(`${room.who} has ${reminder.code}: ${name(reminder)}.`, {
    next: saying(`done ${reminder.code}`, `snooze ${reminder.code} 30 min`),
    data: { ...dataOf(reminder, room), takenBy: room.who },
    mark: {
      who: room.who,
      did: `has it, ${sayDue({ dueMs: room.nowMs }, room)}`,
      next: [doneStep(reminder.code), snoozeStep(reminder.code)],
      told: await toldAt(both, room),
    },
  });
}

/** Somebody finished it or put it off before, perhaps long ago: nothing changes, and the answer says who and when. */
async function doneBefore(reminder: Reminder, name: string, room: Room): Promise<Answer> {
  const who = reminder.doneBy ?? 'Somebody';
  const when = sayDue({ dueMs: reminder.doneMs ?? room.nowMs }, room);
  const again = await putOffTo(reminder, room);
  const told = await toldAt([reminder], room);
  if (again) {
    return answerOf(`${reminder.code} was put off: ${name} is ${again.code}, ${sayDue(again, room)}.`, {
      next: saying(`done ${again.code}`, 'reminders'),
      data: dataOf(again, room),
      mark: { who, did: `put it off to ${sayDue(again, room)} (${again.code})`, next: [], told },
    });
  }
  return answerOf(`${reminder.code} was done before: ${name}, by ${who}, ${when}.`, {
    next: saying('reminders'),
    data: { ...dataOf(reminder, room), doneBy: who },
    mark: { who, did: `did it, ${when}`, next: [], told },
  });
}

async function putOffTo({ key }: Reminder, { books, nowMs }: Room): Promise<Reminder | undefined> {
  const waiting = await books.reminders.upcoming(200);
  const told = await books.reminders.open(nowMs);
  return [...waiting, ...told].find((each) => each.key.startsWith(againKey(key)));
}

const againKey = (key: string): string => `again:${key}:`;

export async function done(reminder: Reminder, room: Room): Promise<Answer> {
  const name = await namer(room);
  if (reminder.doneMs !== undefined) return doneBefore(reminder, name(reminder), room);
  const both = await withRepeated(reminder, room);
  for (const each of both) {
    await room.books.reminders.take(each.id, room.who);
    await room.books.reminders.done(each.id, room.who, room.nowMs);
  }
  return answerOf(`Done: ${name(reminder)} (${reminder.code}).`, {
    next: saying('reminders'),
    data: { ...dataOf(reminder, room), doneBy: room.who },
    mark: {
      who: room.who,
      did: `did it, ${sayDue({ dueMs: room.nowMs }, room)}`,
      next: [],
      told: await toldAt(both, room),
    },
  });
}

async function withRepeated(reminder: Reminder, { books }: Room): Promise<readonly Reminder[]> {
  const { repeats } = reminder.about;
  const first = typeof repeats === 'string' ? await books.reminders.byCode(repeats) : undefined;
  return first ? [first, reminder] : [reminder];
}

async function toldAt(reminders: readonly Reminder[], { books }: Room): Promise<readonly string[]> {
  return (await Promise.all(reminders.map(({ id }) => books.reminders.toldAt(id)))).flat();
}

/** Takes one back that was not told yet; a repeated one stops for good. */
export async function cancel(reminder: Reminder, room: Room): Promise<Answer> {
  const { reminders } = room.books;
  const name = await namer(room);
  const { rule } = reminder.about;
  if (typeof rule === 'string') {
    const stopped = (await reminders.rules()).find(({ id }) => id === rule);
    await reminders.removeRule(rule);
    await reminders.cancel(reminder.id, room.who);
    const every = stopped ? `, ${sayEvery(stopped.weekdays)}` : '';
    return answerOf(`Cancelled for good: ${name(reminder)}${every} (${reminder.code}).`, {
      sections: [{ kind: 'text', text: 'It does not come again.' }],
      next: saying('reminders'),
      data: { ...dataOf(reminder, room), cancelled: true },
    });
  }
  if (!(await reminders.cancel(reminder.id, room.who))) throw alreadyTold(reminder, room);
  return answerOf(`Cancelled: ${name(reminder)}, ${sayDue(reminder, room)} (${reminder.code}).`, {
    next: saying('reminders'),
    data: { ...dataOf(reminder, room), cancelled: true },
  });
}

function alreadyTold(reminder: Reminder, room: Room): Problem {
  const how = { cancelled: 'is cancelled already', missed: 'was missed' }[reminder.state as string];
  return new Problem(
    'not_possible',
    `${reminder.code} ${how ?? `was due ${sayDue(reminder, room)} and has been told`}.`,
    `Say "done ${reminder.code}", or type "reminders".`,
  );
}

/** Another time, for one still to come; one already told is told again then. */
export async function moveTo(
  reminder: Reminder,
  due: Extract<Due, { kind: 'in' | 'at' }>,
  room: Room,
): Promise<Answer> {
  const { books, nowMs, zone } = room;
  const name = await namer(room);
  if (reminder.doneMs !== undefined) return doneBefore(reminder, name(reminder), room);
  const dueMs = due.kind === 'in' ? due.dueMs : instantOf(due, zone);
  const helpsMs = Math.max(reminder.helpsUntilMs - reminder.dueMs, 3_600_000);
  const ends = isOfOneMoment(reminder) ? reminder.helpsUntilMs : dueMs + helpsMs;
  if (ends <= dueMs) throw tooLate(reminder, room);
  const time: NewTime = {
    dueMs,
    helpsUntilMs: ends,
    ...(due.kind === 'at' ? { wall: { date: due.date, time: due.time, zone } } : {}),
  };
  const written = (await books.reminders.move(reminder.id, time, 'person'))
    ? reminder
    : await toldAgain(reminder, time, room);
  const untied = reminder.planned && leadOf(reminder.about) !== undefined && reminder.kind === 'own';
  return answerOf(`${written.code}: ${name(reminder)}, now ${sayDue({ dueMs }, room)}.`, {
    sections: untied ? [{ kind: 'text', text: 'It no longer moves with the game.' }] : [],
    next: saying(`done ${written.code}`, 'reminders'),
    data: { ...dataOf({ ...written, ...time }, room), nowMs },
    mark: {
      who: room.who,
      did: `put it off to ${sayDue({ dueMs }, room)} (${written.code})`,
      next: [],
      told: await toldAt(await withRepeated(reminder, room), room),
    },
  });
}

/** Whoever snoozes it has seen it: it is theirs, and not called unclaimed. */
async function toldAgain(reminder: Reminder, time: NewTime, { books, nowMs, who }: Room): Promise<Reminder> {
  for (const each of await withRepeated(reminder, { books } as Room))
    await books.reminders.take(each.id, who);
  const { key, kind, audience, about } = reminder;
  const again = await books.reminders.add(
    { key: `${againKey(key)}${time.dueMs}`, kind, audience, about, planned: false, ...time },
    nowMs,
  );
  await books.reminders.done(reminder.id, who, nowMs);
  return again;
}

/** What a game or a clock on food asks for cannot be put off beyond it. */
const isOfOneMoment = ({ kind }: Reminder): boolean =>
  kind === 'prep' || kind === 'pack' || kind === 'escalation' || kind === 'still_out';

const tooLate = (reminder: Reminder, room: Room): Problem =>
  new Problem(
    'not_possible',
    `${reminder.code} helps only until ${sayDue({ dueMs: reminder.helpsUntilMs }, room)}.`,
    `Give an earlier time, like "snooze ${reminder.code} 10 min".`,
  );
