import type { Answered, Asked, Command } from '../../command.ts';
import { slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { cancel, done, moveTo, take } from './act.ts';
import { type Due, dueOf } from './due.ts';
import { remindHead } from './head.ts';
import { listReminders } from './list.ts';
import { answerOf, type Room, roomOf } from './room.ts';
import { setReminder } from './set.ts';
import { putOff } from './snooze.ts';
import { whichReminder } from './which.ts';

const SNOOZE_WHEN = '+15min';

export const remind: Command = {
  ...remindHead,
  async answers(asked: Asked): Promise<Answered> {
    const merged = withQuestion(asked);
    const room = roomOf(merged);
    const { action } = merged.slots;
    if (action === 'list') return { answer: await listReminders(room) };
    if (action === undefined && merged.slots.reminder === undefined) return setOne(merged, room);
    return actOn(merged, room);
  },
};

/** The answer to our question keeps what was asked before: "6 pm" joins the day and the task. */
function withQuestion(asked: Asked): Asked {
  const { question } = asked.conversation;
  if (question?.reading.intent !== 'remind' || asked.slots.action !== undefined) return asked;
  if (isWhole(asked)) return asked;
  const before = question.reading.slots;
  const task =
    question.slot === 'task' ? (asked.slots.task ?? before.task) : (before.task ?? asked.slots.task);
  const slots: Slots = { ...before, ...asked.slots, task, when: joined(before.when, hourOf(asked)) };
  return { ...asked, slots: { ...slots, time_unsure: asked.slots.time_unsure } };
}

/** An hour alone is read as today's; beside a day said before it is only the hour. */
const hourOf = ({ slots: { when }, request: { text } }: Asked): unknown =>
  typeof when === 'string' && !/to(?:day|night)|2day/i.test(text) ? when.replace(/^today /, '') : when;

/** A reminder said from the start is a new one, whatever was asked before. */
const isWhole = ({ slots, request }: Asked): boolean =>
  slots.task !== undefined && slots.when !== undefined && /\b(?:remind|timer|alarm)/i.test(request.text);

/** A day from one and an hour from the other. */
function joined(before: unknown, now: unknown): string | undefined {
  if (typeof now !== 'string') return typeof before === 'string' ? before : undefined;
  if (typeof before !== 'string' || now.startsWith('+') || before.startsWith('+')) return now;
  const time = /\d\d:\d\d$/;
  const day = now.replace(time, '').trim() || before.replace(time, '').trim();
  return `${day} ${time.exec(now)?.[0] ?? time.exec(before)?.[0] ?? ''}`.trim();
}

async function setOne(asked: Asked, room: Room): Promise<Answered> {
  const task = slotText(asked.slots, 'task');
  const when = slotText(asked.slots, 'when');
  if (when === undefined) return ask(asked, 'when', 'When?', ['in 20 min', 'tomorrow 8:00 am']);
  const due = dueIn(when, asked, room);
  if (due.kind === 'ask') return askWhen(asked, due, task);
  const audience = slotText(asked.slots, 'audience');
  const wish = {
    task: task ?? 'time is up',
    audience: audience === 'dietitian' ? ('dietitian' as const) : ('kitchen' as const),
    forMe: audience === 'me',
  };
  if (task === undefined && due.kind !== 'in') return ask(asked, 'task', 'To do what?', []);
  return { answer: await setReminder(wish, due, room), conversation: { ...settled(asked) } };
}

/** "7:30" is how people write a time of day; a bare "6" is asked about. */
function dueIn(when: string, asked: Asked, { nowMs, zone }: Room): Due {
  const isWritten = /\b\d{1,2}:\d\d\b/.test(asked.request.text);
  return dueOf({ when, unsure: asked.slots.time_unsure === true && !isWritten, nowMs, zone });
}

function askWhen(asked: Asked, due: Extract<Due, { kind: 'ask' }>, task: string | undefined): Answered {
  const audience = slotText(asked.slots, 'audience') === 'dietitian' ? 'the dietitian' : 'us';
  const says = due.choices.map(({ when }) =>
    when.startsWith('every') ? `${when} ${task ?? ''}` : `remind ${audience} ${when} to ${task ?? ''}`,
  );
  return ask(
    asked,
    'when',
    due.question,
    says,
    due.choices.map(({ label }) => label),
  );
}

function ask(
  asked: Asked,
  slot: string,
  question: string,
  says: readonly string[],
  labels: readonly string[] = says,
): Answered {
  const next = says.map((each, at) => ({ label: labels[at] ?? each, says: each }));
  return {
    answer: answerOf(question, { next, audience: 'asker', data: { asks: slot } }),
    conversation: {
      ...asked.conversation,
      question: { slot, options: [], reading: { intent: 'remind', slots: asked.slots } },
    },
  };
}

function settled(asked: Asked): Asked['conversation'] {
  const { question: _answered, ...rest } = asked.conversation;
  return rest;
}

async function actOn(asked: Asked, room: Room): Promise<Answered> {
  const action = asked.slots.action ?? (asked.slots.when === undefined ? 'take' : 'move');
  const from = action === 'cancel' || action === 'move' ? 'waiting' : 'told';
  const meant = await whichReminder(room, String(action === 'take' ? 'got it' : action), from);
  if ('question' in meant) return { answer: meant.question };
  const { reminder } = meant;
  if (action === 'take') return { answer: await take(reminder, room) };
  if (action === 'done') return { answer: await done(reminder, room) };
  if (action === 'cancel') return { answer: await cancel(reminder, room) };
  const when = slotText(asked.slots, 'when') ?? (action === 'snooze' ? SNOOZE_WHEN : undefined);
  if (when === undefined) return ask(asked, 'when', `Move ${reminder.code} to when?`, []);
  const due = dueIn(when, asked, room);
  if (due.kind === 'in' || due.kind === 'at') {
    const later = action === 'snooze' ? putOff(reminder, due, room) : due;
    return { answer: await moveTo(reminder, later, room) };
  }
  const says =
    due.kind === 'ask' ? due.choices.map((choice) => `move ${reminder.code} to ${choice.when}`) : [];
  return ask(
    asked,
    'when',
    due.kind === 'ask' ? due.question : `Move ${reminder.code} to which day and time?`,
    says,
  );
}
