import { type CalendarDate, instantOf, wallTimeOf } from '../time/zone.ts';
import type { ToldGame } from './calendar/reading.ts';
import type { Game, GameBook } from './game.ts';
import { type ChangedGame, kindOf } from './merge-games.ts';
import { ownGameId } from './own-entries.ts';
import { isSameGame } from './same-game.ts';
import { changedGame, type ToldInChat, withStatus } from './tell-game.ts';

const FIRST_DATE = '0001-01-01' as CalendarDate;
const LAST_DATE = '9999-12-31' as CalendarDate;

/** A calendar's games, parted into those the kitchen itself had written there and all others. */
export interface PartedGames {
  readonly others: readonly ToldGame[];
  readonly own: readonly { readonly told: ToldGame; readonly game: Game }[];
}

/** Our own file read into the kitchen it came from tells of games that are known; elsewhere they are new. */
export async function partOwn(told: readonly ToldGame[], book: GameBook): Promise<PartedGames> {
  if (!told.some(({ uid }) => ownGameId(uid) !== undefined)) return { others: told, own: [] };
  const known = new Map((await book.between(FIRST_DATE, LAST_DATE)).map((game) => [game.id, game]));
  const others: ToldGame[] = [];
  const own = new Map<string, { told: ToldGame; game: Game }>();
  for (const each of told) {
    const game = known.get(ownGameId(each.uid) ?? '');
    if (game) own.set(game.id, { told: each, game });
    else others.push(each);
  }
  return { others, own: [...own.values()] };
}

/**
 * A game as somebody changed it in a file of ours: when and where it is, and whether it is off. All else the kitchen
 * knows better. A file written before the game last changed says nothing new of it.
 */
export function readBack(before: Game, told: ToldGame, nowMs: number): ChangedGame | undefined {
  // A calendar counts whole seconds.
  if ((told.stampMs ?? 0) < Math.floor(before.updatedMs / 1_000) * 1_000) return undefined;
  const moved = changedGame(before, { ...startIn(before.timeZone, told), ...placeOf(told) }, nowMs);
  const game = told.status === before.status ? moved : withStatus(moved, told.status, nowMs);
  return isSameGame(before, game) ? undefined : { kind: kindOf(before, game), game, before };
}

/** A whole day says nothing of the time. */
function startIn(timeZone: string, { date, time, timeZone: toldZone }: ToldGame): ToldInChat {
  return time === undefined ? { date } : wallTimeOf(instantOf({ date, time }, toldZone), timeZone);
}

const placeOf = ({ place }: ToldGame): Pick<Game, 'place'> => (place === undefined ? {} : { place });
