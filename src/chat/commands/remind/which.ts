import type { Reminder } from '../../../kitchen/reminders/reminder.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import { slotText } from '../../slot-number.ts';
import { answerOf, namer, type Room, sayDue, saying } from './room.ts';

const MOST_SHOWN = 6;

/** The reminder that is meant, or the question which one. */
export type Meant = { readonly reminder: Reminder } | { readonly question: Answer };

/** By its code; else the only one told and open, or the only one whose task has these words. */
export async function whichReminder(room: Room, verb: string, from: 'told' | 'waiting'): Promise<Meant> {
  const { books, asked, nowMs } = room;
  const code = slotText(asked.slots, 'reminder');
  if (code !== undefined) return { reminder: await byCode(code, room) };
  const told = await books.reminders.open(nowMs);
  const waiting = await books.reminders.upcoming(200);
  const own = waiting.filter(({ kind }) => kind === 'own');
  const pool = from === 'told' ? told : [...own, ...told.filter(({ kind }) => kind === 'own')];
  const words = wordsOf(slotText(asked.slots, 'task'));
  const name = await namer(room);
  const fitting =
    words.length === 0
      ? pool
      : [...told, ...waiting].filter((each) =>
          words.every((word) => name(each).toLowerCase().includes(word)),
        );
  const [only] = fitting;
  if (only && new Set(fitting.map((each) => each.about.rule ?? each.id)).size === 1)
    return { reminder: only };
  if (!only) {
    throw new Problem(
      'not_found',
      from === 'told' ? 'No reminder is open.' : 'No such reminder is set.',
      'Type "reminders" to see them with their codes.',
    );
  }
  const shown = fitting.slice(0, MOST_SHOWN);
  return {
    question: answerOf(`Which one: ${shown.map((each) => each.code).join(', ')}?`, {
      sections: [
        { kind: 'list', items: shown.map((each) => `${each.code} · ${name(each)} · ${sayDue(each, room)}`) },
      ],
      next: saying(...shown.slice(0, 4).map((each) => `${verb} ${each.code}`)),
      audience: 'asker',
      data: { asks: 'reminder' },
    }),
  };
}

async function byCode(code: string, { books }: Room): Promise<Reminder> {
  const found = await books.reminders.byCode(code);
  if (found) return found;
  throw new Problem(
    'not_found',
    `There is no reminder ${code}.`,
    'Type "reminders" to see them with their codes.',
  );
}

/** "cancel the milk reminder" is about milk. */
const ASKING =
  /^(?:cancel|delete|remove|stop|kill|clear|drop|snooze|move|change|done|the|a|my|our|that|this|reminders?|for|about|to|with|turn|off|it)$/;

const wordsOf = (task: string | undefined): readonly string[] =>
  (task ?? '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '' && !ASKING.test(word));
