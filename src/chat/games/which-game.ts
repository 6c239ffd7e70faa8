import type { Game } from '../../kitchen/games/game.ts';
import { sayGame } from '../../kitchen/games/say-game.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Asked } from '../command.ts';
import { dayMeant, todayOf } from './when.ts';

/** Games to come, cancelled ones last among equals; earliest first. */
export function gamesToCome(asked: Asked, games: readonly Game[]): Game[] {
  const today = todayOf(asked);
  return games.filter(({ date }) => date >= today);
}

/** Whether a game is of the sport and against the opponent that were said, as far as they were. */
export function fits(asked: Asked, game: Game): boolean {
  const { sport, opponent } = asked.slots;
  if (typeof sport === 'string' && !sportFits(sport, game)) return false;
  if (typeof opponent !== 'string') return true;
  const names = `${game.opponent ?? ''} ${game.title}`.toLowerCase();
  return names.includes(opponent.toLowerCase());
}

const sportFits = (said: string, game: Game): boolean =>
  (game.sport ?? game.title).toLowerCase().includes(said.toLowerCase());

/**
 * The one game a request is about: by the day it was (or is), the opponent and the sport; else the one last spoken
 * of; else the next. Several that fit are returned for the person to choose from.
 * @throws Problem `not_found` that lists what is known.
 */
export function gameMeant(asked: Asked, games: readonly Game[], dayText: unknown): Game | readonly Game[] {
  const coming = gamesToCome(asked, games);
  const day = dayMeant(asked, dayText);
  const said = day !== undefined || asked.slots.opponent !== undefined || asked.slots.sport !== undefined;
  if (!said) {
    const spoken = coming.find(({ id }) => id === asked.conversation.last?.slots.game);
    const next = spoken ?? coming.find(({ status }) => status === 'planned');
    if (next) return next;
  }
  const dates: (string | undefined)[] = day ? [day.date, day.orDate] : [];
  const found = coming.filter(
    (game) => fits(asked, game) && (day === undefined || dates.includes(game.date)),
  );
  const planned = found.filter(({ status }) => status === 'planned');
  const best = planned.length > 0 ? planned : found;
  if (best.length === 0) throw noSuchGame(coming);
  return best.length === 1 ? (best[0] as Game) : best;
}

function noSuchGame(coming: readonly Game[]): Problem {
  if (coming.length === 0) {
    return new Problem(
      'not_found',
      'No game is known.',
      'Type "game Sat 2pm vs Riverton", or "import schedule.ics".',
    );
  }
  const known = coming.slice(0, 3).map(sayGame).join('; ');
  return new Problem(
    'not_found',
    'I know no such game.',
    `Known: ${known}. Name its day, like "cancel game ${coming[0]?.date}".`,
  );
}
