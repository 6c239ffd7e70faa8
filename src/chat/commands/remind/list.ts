import type { Reminder } from '../../../kitchen/reminders/reminder.ts';
import type { Answer, Section } from '../../answer.ts';
import { list } from '../../reminders/frame.ts';
import { answerOf, dataOf, namer, type Room, replanned, sayDue, saying } from './room.ts';

const MOST_LINES = 12;
const WEEK_MS = 7 * 24 * 3_600_000;

/** What was told and is open, what could not be told, and what comes next. */
export async function listReminders(room: Room): Promise<Answer> {
  await replanned(room);
  const { reminders } = room.books;
  const name = await namer(room);
  const open = await reminders.open(room.nowMs);
  const upcoming = await reminders.upcoming(200);
  const failed = await reminders.undelivered(room.nowMs - WEEK_MS);
  const [first] = upcoming;
  const own = upcoming.filter(({ kind }) => kind === 'own');
  const planned = upcoming.filter(({ kind }) => kind !== 'own');
  return answerOf(
    first ? `Next: ${name(first)}, ${sayDue(first, room)} (${first.code}).` : 'No reminder is set.',
    {
      sections: [
        ...list(
          open
            .slice(0, MOST_LINES)
            .map(
              (each) =>
                `${each.code} · ${name(each)} · ${each.takenBy === undefined ? 'nobody has it' : `${each.takenBy} has it`}`,
            ),
          'Told, not done',
        ),
        ...list(
          failed.map(({ reminder, problem }) => `${reminder.code} · ${name(reminder)} · ${problem}`),
          'Could not be delivered',
        ),
        ...toCome(own, 'Set by people', room, name),
        ...toCome(planned, 'Planned by the kitchen', room, name),
      ],
      next: saying(...(open[0] ? [`done ${open[0].code}`] : []), ...(first ? [`cancel ${first.code}`] : [])),
      data: {
        open: open.map((each) => dataOf(each, room)),
        upcoming: upcoming.map((each) => dataOf(each, room)),
        undelivered: failed.map(({ reminder, problem }) => ({ ...dataOf(reminder, room), problem })),
      },
    },
  );
}

/** What people set is not buried under what comes every day. */
function toCome(
  reminders: readonly Reminder[],
  heading: string,
  room: Room,
  name: (reminder: Reminder) => string,
): Section[] {
  const more = reminders.length - MOST_LINES;
  return list(
    [
      ...reminders.slice(0, MOST_LINES).map((each) => `${each.code} · ${sayDue(each, room)} · ${name(each)}`),
      ...(more > 0 ? [`and ${more} later`] : []),
    ],
    heading,
  );
}
