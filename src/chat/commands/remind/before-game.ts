import type { Game } from '../../../kitchen/games/game.ts';
import { gameName, sayGame, sayWhen } from '../../../kitchen/games/say-game.ts';
import { dueBefore, type GameLead, leadAbout } from '../../../kitchen/reminders/game-lead.ts';
import type { NewReminder } from '../../../kitchen/reminders/reminder-book.ts';
import { addDays, type ClockTime, dateOf, weekdayOf } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import { slotText } from '../../slot-number.ts';
import type { Due } from './due.ts';
import type { Room } from './room.ts';

const GAMES_AHEAD_DAYS = 400;
const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

export type BeforeGame = Pick<NewReminder, 'dueMs' | 'helpsUntilMs' | 'wall'> & {
  readonly about: NewReminder['about'];
  readonly note: string;
};

/**
 * When "2 hours before the game" is: before the game that was named, else the one just spoken of, else the next that
 * leaves time. The reminder hangs on that game and moves with it.
 */
export async function beforeGame(due: Extract<Due, { kind: 'game' }>, room: Room): Promise<BeforeGame> {
  const { nowMs, zone, asked } = room;
  const { games, next } = await gamesMeant(room);
  const lead = leadFor(due, asked.kitchen.book.settings.prepTime as ClockTime);
  for (const game of games) {
    const tied = { ...lead, gameId: game.id };
    const when = dueBefore(game, tied, zone);
    if (when && when.dueMs > nowMs)
      return { ...when, about: leadAbout(tied), note: noteOf(game, next, room) };
  }
  throw noneFits(games, lead);
}

const leadFor = (
  { days, minutes, time }: Extract<Due, { kind: 'game' }>,
  prepTime: ClockTime,
): Omit<GameLead, 'gameId'> => (minutes > 0 ? { minutes } : { days, time: time ?? prepTime });

function noteOf(game: Game, next: Game | undefined, { asked }: Room): string {
  const sooner = next && next.id !== game.id && asked.slots.before_game === undefined;
  return [
    `Before ${gameName(game)}, ${sayWhen(game)}. It moves with the game, and falls away if the game is off.`,
    ...(asked.slots.recurring === true ? ['Only this one: say it again for another game.'] : []),
    ...(sooner
      ? [`The next game is ${sayGame(next)}: for that one write "before the ${next.date} game".`]
      : []),
  ].join(' ');
}

/** Planned games to come, the one that is meant first or alone, and the very next. */
async function gamesMeant({
  books,
  nowMs,
  zone,
  asked,
}: Room): Promise<{ readonly games: readonly Game[]; readonly next?: Game }> {
  const today = dateOf(nowMs, zone);
  const known = await books.games.between(today, addDays(today, GAMES_AHEAD_DAYS));
  const planned = known.filter(({ status }) => status === 'planned');
  const named = slotText(asked.slots, 'before_game');
  if (named !== undefined) return { games: [fitting(planned, named)] };
  const { last } = asked.conversation;
  const spoken = planned.find(({ id }) => last?.intent === 'game' && id === last.slots.game);
  const [next] = planned;
  return spoken ? { games: [spoken], ...(next ? { next } : {}) } : { games: planned };
}

/** By its day, its opponent or its sport: the first to come. */
function fitting(planned: readonly Game[], named: string): Game {
  const words = named.toLowerCase().replace(/['’]s$/, '');
  const weekday = WEEKDAYS.findIndex((day) => words.startsWith(day)) + 1;
  const found = planned.find(
    (game) =>
      `${game.opponent ?? ''} ${game.title} ${game.sport ?? ''} ${game.side ?? ''}`
        .toLowerCase()
        .includes(words) ||
      game.date === words ||
      (weekday > 0 && weekdayOf(game.date) === weekday),
  );
  if (found) return found;
  const [next] = planned;
  throw new Problem(
    'not_found',
    `I know no game "${named}".`,
    next
      ? `The next is ${sayGame(next)}. Type "schedule next month" to see all.`
      : 'Type "game Sat 2pm vs Riverton" first.',
  );
}

function noneFits(games: readonly Game[], { minutes }: Omit<GameLead, 'gameId'>): Problem {
  const [game] = games;
  if (game && minutes !== undefined && game.time === undefined) {
    return new Problem(
      'needs_more',
      `${sayGame(game)}: nobody has said when it starts.`,
      `Say it first, like "game ${game.date} is at 2pm", or give a day and time: "remind us the day before the game 10am to …".`,
    );
  }
  return new Problem(
    'not_found',
    game ? `${sayGame(game)} leaves no time for that.` : 'No game to come leaves time for that.',
    'Type "schedule" to see the games, or give a day and time.',
  );
}
