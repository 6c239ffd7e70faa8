import {
  type ImportDesk,
  type ImportResult,
  importAddress,
  importCalendar,
} from '../../../kitchen/games/import-calendar.ts';
import type { ChangedGame } from '../../../kitchen/games/merge-games.ts';
import { recordingImport } from '../../../kitchen/games/record-schedule.ts';
import { changeWords } from '../../../kitchen/games/say-change.ts';
import { sayGame } from '../../../kitchen/games/say-game.ts';
import { sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Section } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { remindersFollow } from '../../games/tied-reminders.ts';
import { todayOf } from '../../games/when.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';

const MOST_SHOWN = 5;

/** "import schedule.ics", "import https://…": every game of a calendar, and later its changes. */
export async function importGames(asked: Asked): Promise<Answered> {
  const { games, book, nowMs } = gamesDesk(asked);
  const keep = recordingImport(deskOf(asked), doingOf(asked, nowMs));
  const desk: ImportDesk = { games, settings: book.settings, nowMs, keep };
  const { url, file } = asked.slots;
  if (typeof url === 'string') {
    const fetchCalendar = asked.kitchen.calendars?.fetch;
    if (!fetchCalendar)
      throw new Problem('unavailable', 'Addresses cannot be fetched here.', 'Import a file instead.');
    const result = await importAddress(desk, fetchCalendar, url);
    return result ? told(asked, result, await remindersFollow(asked)) : nothingNew();
  }
  if (typeof file === 'string') {
    const bytes = await opened(asked, file);
    const result = await importCalendar(desk, bytes, { file });
    return told(asked, result, await remindersFollow(asked));
  }
  throw new Problem(
    'needs_more',
    'Which calendar?',
    asked.kitchen.calendars?.file
      ? 'Write "import schedule.ics" or "import https://…".'
      : 'Send the .ics file with your message, or write "import https://…" with the address of the calendar.',
  );
}

async function opened(asked: Asked, path: string): Promise<Uint8Array> {
  const { attached } = asked.request;
  if (attached?.kind === 'calendar') return attached.open();
  if (attached) {
    throw new Problem(
      'bad_file',
      `${attached.fileName} is no calendar and no table; nothing was imported.`,
      'Send a schedule as an .ics file or a roster as a .csv file, or write what you need.',
    );
  }
  const open = asked.kitchen.calendars?.file;
  if (open) return open(path);
  throw new Problem(
    'not_possible',
    'There is no such file here.',
    'Send the .ics file with your message, or write "import https://…" with the address of the calendar.',
  );
}

function nothingNew(): Answered {
  return {
    answer: {
      title: 'Nothing new: the calendar has not changed since it was last read',
      sections: [],
      cautions: [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: { unchanged: true },
    },
  };
}

function told(asked: Asked, result: ImportResult, reminders: readonly string[]): Answered {
  const { calendar, counts, changes, missing, problems, notes } = result;
  return {
    answer: {
      title: `${calendar.name}: ${countWords(result)}`,
      sections: [
        ...nextGames(asked, result),
        ...changeList(changes),
        ...listOf('Reminders', reminders),
        ...listOf('No longer in the calendar, still planned', missing.map(sayGame)),
        ...listOf(
          `${problems.length} could not be read`,
          problems.map(({ line, message, hint }) => `line ${line}: ${message} ${hint}`),
        ),
        ...listOf('Assumed', notes),
      ],
      cautions: missing.length > 0 ? ['If a missing game is off, cancel it: its prep stays until then.'] : [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: {
        calendar: calendar.name,
        ...counts,
        missing: missing.length,
        problems: [...problems],
        notes: [...notes],
      },
    },
  };
}

function countWords({ counts, games }: ImportResult): string {
  const { added, moved, cancelled, restored, changed, unchanged } = counts;
  const parts = [
    [added, 'added'],
    [moved, 'moved'],
    [cancelled, 'cancelled'],
    [restored, 'on again'],
    [changed, 'changed'],
    [unchanged, 'unchanged'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  return said.length > 0 ? said.join(', ') : games.length > 0 ? 'nothing changed' : 'no game in it';
}

function nextGames(asked: Asked, { games, counts }: ImportResult): Section[] {
  if (counts.added === 0) return [];
  const today = todayOf(asked);
  const coming = games.filter(({ date, status }) => date >= today && status === 'planned');
  const more =
    coming.length > 3
      ? [`and ${coming.length - 3} more, to ${sayDate((coming.at(-1) ?? games[0])?.date ?? today)}`]
      : [];
  return listOf('Next', [...coming.slice(0, 3).map(sayGame), ...more]);
}

function changeList(changes: readonly ChangedGame[]): Section[] {
  const told = changes.filter(({ kind, game }) => kind !== 'added' || game.status === 'cancelled');
  return listOf('Changed', told.map(changeWords));
}

function listOf(heading: string, items: readonly string[]): Section[] {
  if (items.length === 0) return [];
  const more = items.length > MOST_SHOWN ? [`and ${items.length - MOST_SHOWN} more`] : [];
  return [{ kind: 'list', heading, items: [...items.slice(0, MOST_SHOWN), ...more] }];
}
