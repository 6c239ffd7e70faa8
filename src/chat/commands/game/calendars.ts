import { recordForgotten } from '../../../kitchen/games/record-schedule.ts';
import { sayInstant } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { remindersFollow } from '../../games/tied-reminders.ts';
import { doingOf } from '../../stock/desk.ts';

/** Where games come from, when each was read and what was wrong. */
export async function listCalendars(asked: Asked): Promise<Answered> {
  const { games, book } = gamesDesk(asked);
  const calendars = await games.calendars();
  const items = calendars.map(({ name, url, readMs, problem }) => {
    const read = readMs === undefined ? '' : `, read ${sayInstant(readMs, book.settings.timeZone)}`;
    return `${name}: ${url ?? 'a file'}${read}${problem === undefined ? '' : `. ${problem}`}`;
  });
  return {
    answer: {
      title:
        calendars.length === 0
          ? 'No calendar yet'
          : `${calendars.length} ${calendars.length === 1 ? 'calendar' : 'calendars'}`,
      sections:
        items.length > 0
          ? [{ kind: 'list', items }]
          : [{ kind: 'text', text: 'Type "import" with an https address or a file.' }],
      cautions: [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: {
        calendars: calendars.map(({ id, name, url }) => ({
          id,
          name,
          ...(url === undefined ? {} : { url }),
        })),
      },
    },
  };
}

/** Forgets a calendar with its games. */
export async function forgetCalendar(asked: Asked): Promise<Answered> {
  const desk = gamesDesk(asked);
  const { games } = desk;
  const said = String(asked.slots.calendar ?? '').toLowerCase();
  const calendars = await games.calendars();
  const fitting = calendars.filter(
    ({ name, url }) => said !== '' && `${name} ${url ?? ''}`.toLowerCase().includes(said),
  );
  const [only] = fitting;
  if (!only || fitting.length > 1) {
    throw new Problem(
      fitting.length > 1 ? 'ambiguous' : 'not_found',
      fitting.length > 1 ? `${fitting.length} calendars fit.` : 'I know no such calendar.',
      calendars.length === 0
        ? 'None is kept.'
        : `Name one: ${calendars.map(({ name }) => `"forget calendar ${name}"`).join(', ')}.`,
    );
  }
  const gone = await games.ofCalendar(only.id);
  const count = gone.length;
  await recordForgotten(desk, doingOf(asked, desk.nowMs), only, gone);
  const back = only.url === undefined ? [] : [`To have it back: import ${only.url}`];
  const items = [...(await remindersFollow(asked)), ...back];
  return {
    answer: {
      title: `${only.name} is forgotten, with its ${count} games and their prep`,
      sections: items.length > 0 ? [{ kind: 'list', items }] : [],
      cautions: [],
      next: ['undo', 'schedule'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { forgotten: only.name, games: count },
    },
  };
}
