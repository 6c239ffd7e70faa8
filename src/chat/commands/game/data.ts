import type { Game } from '../../../kitchen/games/game.ts';
import type { PrepPlan } from '../../../kitchen/games/prep-plan.ts';
import { sayWhen } from '../../../kitchen/games/say-game.ts';

/** A game for machines. Instants are ISO 8601 in UTC. */
export const gameData = (game: Game) => ({
  game_id: game.id,
  when: sayWhen(game),
  date: game.date,
  ...(game.time === undefined ? {} : { time: game.time }),
  time_zone: game.timeZone,
  ...(game.opponent === undefined ? {} : { opponent: game.opponent }),
  ...(game.sport === undefined ? {} : { sport: game.sport }),
  ...(game.side === undefined ? {} : { home_away: game.side }),
  ...(game.departsMs === undefined ? {} : { departs: new Date(game.departsMs).toISOString() }),
  status: game.status,
});

/** What is made for it, for machines. */
export const planData = (plan: PrepPlan) => ({
  ...(plan.recipeId === undefined ? {} : { recipe: plan.recipeId }),
  make_pieces: plan.pieces,
  slabs: plan.slabs,
  from_stock_pieces: plan.fromStock,
  prep_at: new Date(plan.prepAtMs).toISOString(),
  pack_at: new Date(plan.packAtMs).toISOString(),
});
