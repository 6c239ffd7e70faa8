import { gameName, sayWhen } from '../../kitchen/games/say-game.ts';
import type { Composer, ComposingDesk } from '../../kitchen/reminders/composer.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { dateOf } from '../../kitchen/time/zone.ts';
import type { Answer } from '../answer.ts';
import { weekAnswer } from '../commands/stock/week.ts';
import { askedByStaff } from './as-staff.ts';
import { expired, expiring, stillOut } from './dates.ts';
import { framed, type Told, text } from './frame.ts';
import { missedAnswer } from './missed.ts';
import { escalation, pack, prep } from './prep.ts';
import { reading } from './reading.ts';
import { stockCheck } from './stock-check.ts';

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
      return own(reminder, desk);
    case 'calendar':
      return { title: String(reminder.about.title), says: ['schedule'] };
    case 'missed':
      return undefined;
    default:
      return reminder.kind satisfies never;
  }
}

/** Nothing when it was for a game that is off. */
function own({ about }: Reminder, { state }: ComposingDesk): Told | undefined {
  const game = state.tiedGames.find(({ id }) => id === about.gameId);
  if (about.gameId !== undefined && game?.status !== 'planned') return undefined;
  return {
    title: `Reminder: ${about.task}.`,
    sections: game ? [text(`Before ${gameName(game)}, ${sayWhen(game)}.`)] : [],
    data: { task: about.task },
  };
}

/** On Sunday evening the week so far; told late, on Monday, it is the week before. */
async function week({ about }: Reminder, desk: ComposingDesk): Promise<Told> {
  const { book, nowMs } = desk.state;
  const isOver = dateOf(nowMs, book.settings.timeZone) > String(about.to);
  const asked = askedByStaff(desk, isOver ? { when: 'last week' } : {});
  const { title, sections, data } = await weekAnswer(asked, { ledger: desk.ledger, book, nowMs });
  return { title: `Week: ${title}`, sections, says: ['temperature log'], data };
}
