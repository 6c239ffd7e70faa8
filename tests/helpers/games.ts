import type { Game } from '../../src/kitchen/games/game.ts';
import type { Batch, Holding } from '../../src/kitchen/stock/ledger.ts';
import type { CalendarDate, ClockTime } from '../../src/kitchen/time/zone.ts';
import { NEEDS, type Need } from '../../src/nutrition/allergens.ts';

/** A game of the Alder Point Herons in Chicago time, with what a test says of it. */
export function gameOn(date: string, time: string | undefined, more: Partial<Game> = {}): Game {
  return {
    id: `game-${date}-${time ?? 'tba'}`,
    uid: `${date}-${time ?? 'tba'}@example.org`,
    sequence: 0,
    title: 'Herons vs Riverton',
    opponent: 'Riverton',
    side: 'home',
    date: date as CalendarDate,
    ...(time === undefined ? {} : { time: time as ClockTime }),
    timeZone: 'America/Chicago',
    status: 'planned',
    updatedMs: 0,
    ...more,
  };
}

/** Pieces in the fridge with a last day. */
export function held(recipeId: string, pieces: number, useBy: string, more: Partial<Holding> = {}): Holding {
  const batch: Batch = {
    id: `batch-${recipeId}-${useBy}`,
    code: 'B1',
    eventId: 'e',
    recipeId,
    recipeTitle: recipeId,
    recipeVersion: '',
    pieceUnit: 'bar',
    pieces,
    madeMs: 0,
    madeDate: '2026-01-01' as CalendarDate,
    facts: {
      ingredients: [],
      contains: [],
      advisory: [],
      notKnown: [],
      verdicts: Object.fromEntries(NEEDS.map((need) => [need, 'ask'])) as Record<Need, 'ask'>,
      days: 7,
      keepCold: true,
    },
    lots: [],
  };
  return {
    id: `holding-${recipeId}-${useBy}`,
    batch,
    eventId: 'e',
    location: 'fridge',
    state: 'fridge',
    sinceMs: 0,
    sinceDate: '2026-01-01' as CalendarDate,
    useBy: useBy as CalendarDate,
    thawed: false,
    pieces,
    ...more,
  };
}
