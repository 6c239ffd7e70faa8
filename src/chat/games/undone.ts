import type { Game } from '../../kitchen/games/game.ts';
import { kindOf } from '../../kitchen/games/merge-games.ts';
import { outlook, outlookWith } from '../../kitchen/games/outlook.ts';
import { gameName, sayGame, sayWhen } from '../../kitchen/games/say-game.ts';
import type { BeforeAfter } from '../../kitchen/games/schedule-entry.ts';
import type { ScheduleUndone } from '../../kitchen/games/undo-schedule.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import type { Book } from '../../nutrition/book.ts';
import type { Section } from '../answer.ts';
import type { Answered, Asked } from '../command.ts';
import { gamesDesk } from './desk.ts';
import { effectLines } from './plan-lines.ts';

const MOST_SHOWN = 5;

/** Says which change of a game or calendar was taken back, how it is now, and what follows for prep and packing. */
export async function scheduleUndone(
  asked: Asked,
  undone: ScheduleUndone,
  reminders: readonly string[],
): Promise<Answered> {
  const [calendar] = undone.calendars;
  const [only] = undone.games;
  const effects = calendar || !only ? [] : await effectsOf(asked, only);
  const items = calendar ? calendarLines(undone) : [...differences(only, asked.kitchen.book), ...effects];
  return {
    answer: {
      title: calendar ? calendarTitle(undone) : gameTitle(only),
      sections: [
        ...list([...items, ...reminders]),
        ...list(undone.left.map(sayGame), 'Changed since, so they stay as they are'),
      ],
      cautions: [],
      next: ['schedule', 'undo'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        undone: true,
        kind: calendar ? 'calendar' : 'game',
        games: undone.games.map(({ id, before, after }) => ({
          game_id: id,
          ...(before ? { was: sayGame(before) } : {}),
          ...(after ? { now: sayGame(after) } : {}),
        })),
        left: undone.left.map(({ id }) => id),
      },
    },
    conversation: spokenOf(asked, only?.after),
  };
}

async function effectsOf(asked: Asked, { before, after }: BeforeAfter<Game>): Promise<string[]> {
  const game = after ?? before;
  if (!game) return [];
  const { book } = asked.kitchen;
  const now = await outlook(gamesDesk(asked));
  const until = before ? outlookWith(now, [before], book, asked.request.nowMs) : now;
  return effectLines(asked, until, now, game);
}

/** "moved to 3pm" after an undo is about the game that came back. */
function spokenOf({ conversation }: Asked, game: Game | undefined): Asked['conversation'] {
  const { last: _last, ...rest } = conversation;
  return game ? { ...rest, last: { intent: 'game', slots: { game: game.id } } } : rest;
}

function gameTitle(change: BeforeAfter<Game> | undefined): string {
  const { before, after } = change ?? {};
  if (before && !after) return `Undone: the new game, ${sayGame(before)}. It is off the list.`;
  if (!before || !after) return after ? `Undone: ${sayGame(after)} is back.` : 'Undone.';
  switch (kindOf(before, after)) {
    case 'moved':
      return `Undone: ${gameName(after)} is on ${sayWhen(after)} again, not ${sayWhen(before)}.`;
    case 'restored':
      return `Undone: the cancellation. On again: ${sayGame(after)}.`;
    case 'cancelled':
      return `Undone: it is off again. ${sayGame(after)}.`;
    default:
      return `Undone: the change of ${gameName(after)}. As before: ${sayGame(after)}.`;
  }
}

function differences(change: BeforeAfter<Game> | undefined, book: Book): string[] {
  const { before, after } = change ?? {};
  if (!before || !after) return [];
  const zone = book.settings.timeZone;
  const people = (game: Game) =>
    game.people === undefined ? 'the usual number of people' : `${game.people} people`;
  const leaves = ({ departsMs }: Game) =>
    departsMs === undefined ? 'no departure' : `leaves ${sayInstant(departsMs, zone)}`;
  const snack = ({ recipeId = '' }: Game) =>
    book.recipes.get(recipeId)?.title.toLowerCase() ?? "the kitchen's usual";
  return [people, leaves, snack].flatMap((say) =>
    say(before) === say(after) ? [] : [`Again ${say(after)}, not ${say(before)}`],
  );
}

function calendarTitle({ games, calendars: [calendar] }: ScheduleUndone): string {
  const { before, after } = calendar ?? {};
  const count = `${games.length} ${games.length === 1 ? 'game' : 'games'}`;
  if (before && !after)
    return `Undone: the import of ${before.name}. Its ${count} are off the list, with their prep.`;
  if (!before && after) return `Undone: ${after.name} is known again, with ${count} and their prep.`;
  return `Undone: what the last import of ${after?.name ?? 'the calendar'} changed in ${count}.`;
}

/** Only an import over a known calendar needs each game named; a whole calendar is in the title. */
function calendarLines({ games, calendars: [calendar] }: ScheduleUndone): string[] {
  if (!calendar?.before || !calendar.after) return [];
  return games.map((change) => gameTitle(change).replace(/^Undone: /, ''));
}

function list(items: readonly string[], heading?: string): Section[] {
  if (items.length === 0) return [];
  const more = items.length > MOST_SHOWN ? [`and ${items.length - MOST_SHOWN} more`] : [];
  return [
    {
      kind: 'list',
      ...(heading === undefined ? {} : { heading }),
      items: [...items.slice(0, MOST_SHOWN), ...more],
    },
  ];
}
