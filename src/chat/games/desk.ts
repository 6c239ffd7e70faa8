import type { GamesDesk } from '../../kitchen/games/outlook.ts';
import type { Asked } from '../command.ts';

/** The games desk of the workspace a request comes from. */
export function gamesDesk({ kitchen, request }: Asked): GamesDesk {
  const { workspace } = request.asker;
  return {
    games: kitchen.games(workspace),
    ledger: kitchen.ledgers(workspace),
    book: kitchen.book,
    nowMs: request.nowMs,
  };
}
