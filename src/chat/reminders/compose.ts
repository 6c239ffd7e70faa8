import type { Composer, ComposingDesk } from '../../kitchen/reminders/composer.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { calendarDate } from '../../kitchen/time/zone.ts';
import { weekSummary } from '../../kitchen/week/week-summary.ts';
import type { Answer } from '../answer.ts';
import { expired, expiring, stillOut } from './dates.ts';
import { framed, type Told } from './frame.ts';
import { missedAnswer } from './missed.ts';
import { escalation, pack, prep } from './prep.ts';
import { reading } from './reading.ts';
import { stockCheck } from './stock-check.ts';
import { weekTold } from './week.ts';

/** Writes reminders as answers, from the kitchen as it is when they go out. */
export const reminderComposer: Composer = {
  async compose(reminder, desk) {
    const told = await toldOf(reminder, desk);
    return told && JSON.stringify(framed(told, reminder, desk));
  },
  composeMissed: (_audience, missed, state) => JSON.stringify(missedAnswer(missed, state)),
};

/** The answer inside a message, as the composer wrote it. */
export const answerIn = (body: string): Answer => JSON.parse(body) as Answer;

async function toldOf(reminder: Reminder, desk: ComposingDesk): Promise<Told | undefined> {
  switch (reminder.kind) {
    case 'prep':
      return prep(reminder, desk);
    case 'pack':
      return pack(reminder, desk);
    case 'stock_check':
      return stockCheck(desk);
    case 'expiring':
      return expiring(desk);
    case 'expired':
      return expired(desk);
    case 'reading':
      return reading(desk);
    case 'still_out':
      return stillOut(reminder, desk);
    case 'week':
      return week(reminder, desk);
    case 'escalation':
      return escalation(reminder, desk);
    case 'own':
      return { title: `Reminder: ${reminder.about.task}.`, data: { task: reminder.about.task } };
    case 'calendar':
      return { title: String(reminder.about.title), says: ['schedule'] };
    case 'missed':
      return undefined;
    default:
      return reminder.kind satisfies never;
  }
}

async function week({ about }: Reminder, { state, ledger }: ComposingDesk): Promise<Told> {
  const days = { from: calendarDate(String(about.from)), to: calendarDate(String(about.to)) };
  return weekTold(await weekSummary(ledger, state.book, days, state.nowMs), state.book);
}
