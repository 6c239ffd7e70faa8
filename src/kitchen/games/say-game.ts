import { instantOf, sayDate, sayTime, zoneName } from '../time/zone.ts';
import type { Game } from './game.ts';

/** "vs Riverton", "at Riverton", "away game", or the title: how people call it. */
export function gameName(game: Game): string {
  if (isNameless(game))
    return `${game.side === undefined ? '' : `${game.side} `}${game.sport ?? ''} game`
      .replace(/\s+/g, ' ')
      .trim();
  if (game.opponent === undefined) return game.title;
  return game.side === 'away' ? `at ${game.opponent}` : `vs ${game.opponent}`;
}

/** Typed without an opponent; a title from a calendar says more. */
const isNameless = (game: Game): boolean => game.opponent === undefined && game.calendarId === undefined;

/** "Sat Dec 5, 2:00 pm CST", or "Sat Dec 5, time not announced". */
export function sayWhen(game: Pick<Game, 'date' | 'time' | 'timeZone'>): string {
  const { date, time, timeZone } = game;
  if (time === undefined) return `${sayDate(date)}, time not announced`;
  return `${sayDate(date)}, ${sayTime(time)} ${zoneName(instantOf({ date, time }, timeZone), timeZone)}`;
}

/** "Sat Dec 5, 2:00 pm CST: soccer vs Riverton (home)". */
export function sayGame(game: Game): string {
  const sport = game.sport !== undefined && game.opponent !== undefined ? `${game.sport} ` : '';
  const side = game.side === undefined || isNameless(game) ? '' : ` (${game.side})`;
  const cancelled = game.status === 'cancelled' ? ', cancelled' : '';
  return `${sayWhen(game)}: ${sport}${gameName(game)}${side}${cancelled}`;
}
