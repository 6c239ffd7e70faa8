import type { Game } from '../../../kitchen/games/game.ts';
import { packTime } from '../../../kitchen/games/prep/demand.ts';
import { sayGame } from '../../../kitchen/games/say-game.ts';
import { addDays, type CalendarDate, instantOf, sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Asked } from '../../command.ts';
import { dayMeant, timeIn, todayOf } from '../../games/when.ts';
import { fits } from '../../games/which-game.ts';

/** What is planned for: a day, the game on it when one is known, and when it is packed. */
export interface Occasion {
  readonly date: CalendarDate;
  readonly game?: Game;
  readonly packAtMs: number;
  readonly packReason: string;
}

/**
 * The day that was said, with its game; the next game when no day was said.
 * @throws Problem for a past day, no day at all, or several games of which one has to be named.
 */
export function occasionMeant(asked: Asked, games: readonly Game[]): Occasion {
  const { slots, kitchen } = asked;
  const day = dayMeant(asked, slots.when);
  const today = todayOf(asked);
  const known = games.filter((game) => game.status === 'planned' && game.date >= today && fits(asked, game));
  const dates = day ? [day.date, ...(day.orDate ? [day.orDate] : [])] : [];
  const found = day ? known.filter(({ date }) => dates.includes(date)) : known.slice(0, 1);
  if (found.length > 1) throw whichGame(found);
  const [game] = found;
  if (!game && (!day || slots.opponent !== undefined)) throw noDay(known);
  if (!game && day?.orDate)
    throw new Problem(
      'needs_more',
      `Today or ${sayDate(day.orDate)}?`,
      `Write "plan today 44" or "plan ${addDays(day.date, 7)} 44".`,
    );
  const date = game?.date ?? day?.date ?? today;
  const said = timeIn(slots.when);
  const departsMs = said ? instantOf({ date, time: said }, kitchen.book.settings.timeZone) : undefined;
  const pack = packTime(game, date, departsMs, kitchen.book);
  return { date, ...(game ? { game } : {}), packAtMs: pack.atMs, packReason: pack.reason };
}

const whichGame = (games: readonly Game[]): Problem =>
  new Problem(
    'needs_more',
    `Which game: ${games.map(sayGame).join('; ')}?`,
    `Name it, like "plan vs ${games[0]?.opponent ?? 'Riverton'} 44".`,
  );

function noDay(known: readonly Game[]): Problem {
  return new Problem(
    'needs_more',
    known.length > 0
      ? `No such game. Known: ${known.slice(0, 3).map(sayGame).join('; ')}.`
      : 'For which day?',
    'Write the day, like "plan saturday 44 travelling 5 nut free 2 coeliac".',
  );
}
