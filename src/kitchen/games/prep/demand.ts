import type { Book } from '../../../nutrition/book.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { CalendarDate } from '../../time/zone.ts';
import { type ClockTime, clockTime, dateOf, instantOf, sayInstant } from '../../time/zone.ts';
import type { Game } from '../game.ts';
import { gameName } from '../say-game.ts';

/** Packed an hour before leaving, or before the start at home: common practice, no source. */
const PACK_MIN = 60;

/** What one game asks of the kitchen. */
export interface Demand {
  readonly game: Game;
  readonly recipe?: Recipe;
  /** Pieces; undefined when nobody said how many people. */
  readonly wanted?: number;
  /** The game's day in the kitchen's zone: the food must be in date then. */
  readonly date: CalendarDate;
  /** The last instant at which stock must still be in date. */
  readonly servedMs: number;
  readonly packAtMs: number;
  readonly reasons: readonly string[];
  readonly conflicts: readonly string[];
}

/** The start of a game; undefined while its time is not announced. */
export function startOf(game: Game): number | undefined {
  return game.time === undefined ? undefined : instantOf({ date: game.date, time: game.time }, game.timeZone);
}

/** Works out how many pieces of what, and when they are packed. */
export function demandOf(game: Game, book: Book): Demand {
  const zone = book.settings.timeZone;
  const startMs = startOf(game);
  const date = startMs === undefined ? game.date : dateOf(startMs, zone);
  const what = recipeFor(game, book);
  const count = piecesFor(game, book, what.recipe);
  const pack = packingOf(game, startMs, date, book);
  return {
    game,
    ...(what.recipe ? { recipe: what.recipe } : {}),
    ...(count.wanted === undefined ? {} : { wanted: count.wanted }),
    date,
    servedMs: startMs ?? instantOf({ date, time: '23:59' as ClockTime }, zone),
    packAtMs: pack.atMs,
    reasons: [...count.reasons, pack.reason],
    conflicts: [...what.conflicts, ...count.conflicts],
  };
}

function recipeFor(game: Game, book: Book): { recipe?: Recipe; conflicts: string[] } {
  const id = game.recipeId ?? book.settings.gameRecipe;
  const recipe = id === undefined ? undefined : book.recipes.get(id);
  if (recipe) return { recipe, conflicts: [] };
  const missing = id === undefined ? 'Nobody said what is made for it' : `This kitchen has no recipe "${id}"`;
  return { conflicts: [`${missing}: say "${gameName(game)} with oat bars", or set game_recipe.`] };
}

function piecesFor(
  game: Game,
  book: Book,
  recipe: Recipe | undefined,
): { wanted?: number; reasons: string[]; conflicts: string[] } {
  const { piecesPerPerson: each, spareShare, gamePeople } = book.settings;
  const people = game.people ?? gamePeople;
  if (people === undefined) {
    return { reasons: [], conflicts: [`Nobody said how many people: say "${gameName(game)} 44 people".`] };
  }
  const wanted = Math.ceil(people * each * (1 + spareShare) - 1e-9);
  const unit = recipe ? recipe.title.toLowerCase() : 'pieces';
  const usual = game.people === undefined ? ' (the usual number)' : '';
  const spare = spareShare > 0 ? ` + ${Math.round(spareShare * 1000) / 10} % spare` : '';
  return {
    wanted,
    reasons: [`${people} people${usual} × ${each}${spare} = ${wanted} ${unit}`],
    conflicts: [],
  };
}

function packingOf(
  game: Pick<Game, 'departsMs' | 'side'>,
  startMs: number | undefined,
  date: CalendarDate,
  book: Book,
): { atMs: number; reason: string } {
  const zone = book.settings.timeZone;
  const packMin = book.settings.packMin ?? PACK_MIN;
  const leadMs = packMin * 60_000;
  if (game.departsMs !== undefined) {
    const atMs = game.departsMs - leadMs;
    return {
      atMs,
      reason: `packed ${sayInstant(atMs, zone)}, ${packMin} min before leaving ${sayInstant(game.departsMs, zone)}`,
    };
  }
  const morning = instantOf({ date, time: clockTime(book.settings.stockCheckTime) }, zone);
  if (startMs === undefined) {
    return {
      atMs: morning,
      reason: `start not announced, so packed with the morning check ${sayDay(morning)}`,
    };
  }
  const beforeStart = startMs - leadMs;
  if (game.side === 'away') {
    const atMs = Math.min(morning, beforeStart);
    return { atMs, reason: `away and no departure told, so packed ${sayDay(atMs)}` };
  }
  return { atMs: beforeStart, reason: `packed ${sayDay(beforeStart)}, ${packMin} min before the start` };

  function sayDay(atMs: number): string {
    return sayInstant(atMs, zone);
  }
}

/** When food is packed for a day: before the departure that was said, else as for its game, else with the morning check. */
export function packTime(
  game: Game | undefined,
  date: CalendarDate,
  departsMs: number | undefined,
  book: Book,
): { readonly atMs: number; readonly reason: string } {
  const plain = { date, timeZone: book.settings.timeZone };
  const asked = { ...(game ?? plain), ...(departsMs === undefined ? {} : { departsMs }) };
  const startMs = game && startOf(game);
  return packingOf(
    asked,
    startMs,
    startMs === undefined ? date : dateOf(startMs, book.settings.timeZone),
    book,
  );
}
