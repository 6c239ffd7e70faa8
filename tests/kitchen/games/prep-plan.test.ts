import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Game } from '../../../src/kitchen/games/game.ts';
import { type PrepPlan, prepPlans } from '../../../src/kitchen/games/prep-plan.ts';
import type { Holding } from '../../../src/kitchen/stock/ledger.ts';
import {
  addDays,
  type CalendarDate,
  dateOf,
  instantOf,
  wallTimeOf,
  weekdayOf,
} from '../../../src/kitchen/time/zone.ts';
import type { Book, KitchenSettings } from '../../../src/nutrition/book.ts';
import type { Recipe } from '../../../src/nutrition/recipe.ts';
import { gameOn, held } from '../../helpers/games.ts';
import { pantryKitchen } from '../../helpers/pantry-kitchen.ts';

const ZONE = 'America/Chicago';
const at = (date: string, time: string): number =>
  instantOf({ date: date as CalendarDate, time: time as Game['time'] & string }, ZONE);
/** "2026-12-04 10:00" in the kitchen's zone. */
const wall = (ms: number): string => Object.values(wallTimeOf(ms, ZONE)).join(' ');
const NOW = at('2026-11-30', '08:00');

function bars(more: Partial<Recipe> = {}): Recipe {
  return {
    id: 'oat-bars',
    title: 'Oat bars',
    aliases: [],
    kind: 'no_bake_bar',
    version: '2026-01-01',
    yieldPieces: 12,
    pieceUnit: 'bar',
    lines: [],
    moistureLoss: 0,
    handlingLoss: 0,
    steps: [],
    pan: { id: '8x8', name: '8 x 8 in pan', lengthIn: 8, widthIn: 8, depthIn: 2 },
    set: { leastMin: 60, betterMin: 120 },
    storage: 'refrigerated',
    shelfLifeDays: 7,
    tags: [],
    ...more,
  };
}

function bookWith(recipe: Recipe, settings: Partial<KitchenSettings> = {}): Book {
  const { book } = pantryKitchen();
  return {
    ...book,
    recipes: new Map([[recipe.id, recipe]]),
    settings: { ...book.settings, prepTime: '10:00', gameRecipe: recipe.id, gamePeople: 40, ...settings },
  };
}

interface Setting {
  readonly recipe?: Partial<Recipe>;
  readonly settings?: Partial<KitchenSettings>;
  readonly holdings?: readonly Holding[];
  readonly nowMs?: number;
}

function plansFor(games: readonly Game[], setting: Setting = {}): readonly PrepPlan[] {
  return prepPlans({
    games,
    holdings: setting.holdings ?? [],
    book: bookWith(bars(setting.recipe), setting.settings),
    nowMs: setting.nowMs ?? NOW,
  });
}

function planFor(game: Game, setting: Setting = {}): PrepPlan {
  const plans = plansFor([game], setting);
  expect(plans).toHaveLength(1);
  return plans[0] as PrepPlan;
}

describe('how many', () => {
  test('40 people, one each, 10 % spare: 44 wanted, 4 slabs of 12', () => {
    expect(planFor(gameOn('2026-12-05', '14:00'))).toMatchObject({
      wanted: 44,
      pieces: 48,
      slabs: 4,
      fromStock: 0,
    });
  });

  test('two pieces each for 10 people and no spare is 20, exactly, not 21', () => {
    const plan = planFor(gameOn('2026-12-05', '14:00', { people: 10 }), {
      settings: { piecesPerPerson: 2, spareShare: 0 },
    });
    expect(plan).toMatchObject({ wanted: 20, slabs: 2 });
  });

  test('a spare share never adds a piece by rounding error', () => {
    expect(planFor(gameOn('2026-12-05', '14:00', { people: 50 })).wanted).toBe(55);
    expect(
      planFor(gameOn('2026-12-05', '14:00', { people: 30 }), { settings: { spareShare: 0.2 } }).wanted,
    ).toBe(36);
  });

  test('stock in date at the game counts, and the plan says until when it is good', () => {
    const plan = planFor(gameOn('2026-12-05', '14:00'), { holdings: [held('oat-bars', 20, '2026-12-05')] });
    expect(plan).toMatchObject({ fromStock: 20, slabs: 2, pieces: 24 });
    expect(plan.reasons.join('\n')).toContain('20 of them from stock, good through Sat Dec 5');
  });

  test('stock that ends the day before, is frozen, is out on the clock or is other food does not count', () => {
    const holdings = [
      held('oat-bars', 20, '2026-12-04'),
      held('oat-bars', 20, '2026-12-30', { state: 'freezer' }),
      held('oat-bars', 20, '2026-12-09', { state: 'out' }),
      held('other', 20, '2026-12-09'),
    ];
    expect(planFor(gameOn('2026-12-05', '14:00'), { holdings }).fromStock).toBe(0);
  });

  test('enough stock: nothing is made, and it is still packed', () => {
    const plan = planFor(gameOn('2026-12-05', '14:00'), { holdings: [held('oat-bars', 60, '2026-12-06')] });
    expect(plan).toMatchObject({ pieces: 0, slabs: 0, fromStock: 44 });
    expect(plan.packs).toEqual([
      { gameId: 'game-2026-12-05-14:00', pieces: 44, packAtMs: at('2026-12-05', '13:00') },
    ]);
  });

  test('the same stock is not promised to two games', () => {
    const plans = plansFor([gameOn('2026-12-05', '14:00'), gameOn('2026-12-09', '14:00')], {
      holdings: [held('oat-bars', 50, '2026-12-10')],
    });
    expect(plans.map(({ fromStock }) => fromStock)).toEqual([44, 6]);
  });

  test('nobody said how many or what: the plan asks instead of guessing', () => {
    const { gamePeople: _people, ...settings } = bookWith(bars()).settings;
    const book = { ...bookWith(bars()), settings };
    const [plan] = prepPlans({ games: [gameOn('2026-12-05', '14:00')], holdings: [], book, nowMs: NOW });
    expect(plan).toMatchObject({ pieces: 0, conflicts: [expect.stringContaining('how many people')] });
    expect(plan?.wanted).toBeUndefined();
    const strange = planFor(gameOn('2026-12-05', '14:00', { recipeId: 'fig-rolls' }));
    expect(strange.conflicts[0]).toContain('no recipe "fig-rolls"');
  });
});

describe('when', () => {
  test("the kitchen's hour on the day before", () => {
    const plan = planFor(gameOn('2026-12-05', '14:00'));
    expect(wall(plan.prepAtMs)).toBe('2026-12-04 10:00');
    expect(wall(plan.packAtMs)).toBe('2026-12-05 13:00');
    expect(plan.useBy).toBe('2026-12-10');
  });

  test('a day earlier when the bus leaves the evening before and the slab would not be set', () => {
    const plan = planFor(
      gameOn('2026-12-05', '09:00', { side: 'away', departsMs: at('2026-12-04', '11:30') }),
    );
    expect(wall(plan.prepAtMs)).toBe('2026-12-03 10:00');
    expect(wall(plan.packAtMs)).toBe('2026-12-04 10:30');
    expect(plan.reasons.join('\n')).toContain('Fri Dec 4 would be too late to set before packing');
  });

  test('moved off closed days, and says which', () => {
    const plan = planFor(gameOn('2026-12-07', '14:00'), { settings: { closedWeekdays: [6, 7] } });
    expect(wall(plan.prepAtMs)).toBe('2026-12-04 10:00');
    expect(plan.reasons).toContain('Sun Dec 6 is closed');
    expect(plan.reasons).toContain('Sat Dec 5 is closed');
  });

  test('never so early that the use-by misses the game: then the closed day is named as the conflict', () => {
    const plan = planFor(gameOn('2026-12-07', '14:00'), {
      recipe: { shelfLifeDays: 2 },
      settings: { closedWeekdays: [1, 6, 7] },
    });
    expect(wall(plan.prepAtMs)).toBe('2026-12-06 10:00');
    expect(plan.conflicts[0]).toContain('Sun Dec 6 is a closed day');
  });

  test('what keeps one day is made on the day itself, early enough to be packed', () => {
    const plan = planFor(gameOn('2026-12-05', '11:00'), {
      recipe: { shelfLifeDays: 1, set: { leastMin: 30, betterMin: 60 } },
    });
    expect(wall(plan.prepAtMs)).toBe('2026-12-05 08:30');
    expect(plan.conflicts).toEqual([]);
  });

  test('what keeps one day but leaves at dawn cannot be done, and the plan says so', () => {
    const plan = planFor(gameOn('2026-12-05', '11:00', { departsMs: at('2026-12-05', '05:30') }), {
      recipe: { shelfLifeDays: 1 },
    });
    expect(plan.conflicts[0]).toContain('cannot be made, set and still be in date');
  });

  test('a start not announced: packed with the morning check, made the day before', () => {
    const plan = planFor(gameOn('2026-12-05', undefined));
    expect(wall(plan.packAtMs)).toBe('2026-12-05 08:00');
    expect(wall(plan.prepAtMs)).toBe('2026-12-04 10:00');
  });

  test('a game in another zone is packed by its instant, shown in the zone of the kitchen', () => {
    const plan = planFor(gameOn('2026-12-05', '00:30', { timeZone: 'America/New_York' }));
    expect(wall(plan.packAtMs)).toBe('2026-12-04 22:30');
    expect(wall(plan.prepAtMs)).toBe('2026-12-03 10:00');
  });

  test('told late: the usual time has passed, and the latest start is said', () => {
    const plan = planFor(gameOn('2026-12-05', '14:00'), { nowMs: at('2026-12-04', '17:00') });
    expect(wall(plan.prepAtMs)).toBe('2026-12-04 10:00');
    expect(plan.conflicts).toEqual([
      'The usual time has passed: start by Sat Dec 5, 11:00 am CST at the latest.',
    ]);
    const late = planFor(gameOn('2026-12-05', '14:00'), { nowMs: at('2026-12-05', '12:00') });
    expect(late.conflicts[0]).toContain('Too late to be set by packing');
  });

  test('the hour holds over the change of clocks', () => {
    const plan = planFor(gameOn('2026-11-01', '14:00'), { nowMs: at('2026-10-25', '08:00') });
    expect(wall(plan.prepAtMs)).toBe('2026-10-31 10:00');
    expect(new Date(plan.prepAtMs).toISOString()).toBe('2026-10-31T15:00:00.000Z');
  });
});

describe('several games', () => {
  test('Friday and Saturday share one batch, rounded up once', () => {
    const plans = plansFor([
      gameOn('2026-12-04', '19:00', { people: 15 }),
      gameOn('2026-12-05', '14:00', { people: 15 }),
    ]);
    expect(plans).toHaveLength(1);
    expect(plans[0]).toMatchObject({ wanted: 34, slabs: 3, pieces: 36 });
    expect(plans[0]?.packs.map(({ pieces }) => pieces)).toEqual([17, 17]);
  });

  test('they do not when the use-by would miss the second', () => {
    const games = [gameOn('2026-12-04', '19:00'), gameOn('2026-12-05', '14:00')];
    expect(plansFor(games, { recipe: { shelfLifeDays: 2 } }).map(({ gameIds }) => gameIds)).toEqual([
      ['game-2026-12-04-19:00'],
      ['game-2026-12-05-14:00'],
    ]);
  });

  test('games a week apart do not share', () => {
    expect(plansFor([gameOn('2026-12-05', '14:00'), gameOn('2026-12-09', '14:00')])).toHaveLength(2);
  });

  test('what one batch leaves over serves the next game it is in date for', () => {
    const [, later] = plansFor([gameOn('2026-12-05', '14:00'), gameOn('2026-12-09', '14:00')]);
    expect(later).toMatchObject({ fromStock: 4, slabs: 4 });
  });

  test('cancelled games and games that have begun get no plan', () => {
    const games = [gameOn('2026-11-29', '14:00'), gameOn('2026-12-05', '14:00', { status: 'cancelled' })];
    expect(plansFor(games)).toEqual([]);
  });
});

test('whatever the season, every game is served once, in date, from stock that exists', () => {
  const season = fc.array(
    fc.record({
      day: fc.integer({ min: 1, max: 28 }),
      hour: fc.integer({ min: 8, max: 21 }),
      people: fc.integer({ min: 1, max: 90 }),
    }),
    { maxLength: 10 },
  );
  fc.assert(
    fc.property(
      season,
      fc.integer({ min: 1, max: 7 }),
      fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { maxLength: 5 }),
      fc.array(fc.record({ pieces: fc.integer({ min: 1, max: 60 }), day: fc.integer({ min: 0, max: 28 }) }), {
        maxLength: 4,
      }),
      (games, shelfLifeDays, closedWeekdays, shelf) => {
        const told = games.map(({ day, hour, people }, i) =>
          gameOn(addDays('2026-11-30' as CalendarDate, day), `${String(hour).padStart(2, '0')}:00`, {
            id: `g${i}`,
            people,
          }),
        );
        const holdings = shelf.map(({ pieces, day }, i) =>
          held('oat-bars', pieces, addDays('2026-11-30' as CalendarDate, day), { id: `h${i}` }),
        );
        const plans = plansFor(told, { recipe: { shelfLifeDays }, settings: { closedWeekdays }, holdings });
        expect(plans.flatMap(({ gameIds }) => gameIds).sort()).toEqual(told.map(({ id }) => id).sort());
        let made = 0;
        let taken = 0;
        for (const plan of plans) {
          made += plan.pieces;
          taken += plan.fromStock;
          expect(plan.pieces + plan.fromStock).toBeGreaterThanOrEqual(plan.wanted ?? Number.NaN);
          expect(plan.pieces % 12).toBe(0);
          if (plan.slabs === 0 || plan.conflicts.length > 0) continue;
          const last = told.find(({ id }) => id === plan.gameIds.at(-1));
          expect((plan.useBy ?? '') >= (last?.date ?? '9')).toBe(true);
          expect(closedWeekdays).not.toContain(weekdayOf(dateOf(plan.prepAtMs, ZONE)));
          expect(plan.prepAtMs).toBeLessThanOrEqual(plan.latestStartMs);
        }
        expect(taken).toBeLessThanOrEqual(made + shelf.reduce((sum, { pieces }) => sum + pieces, 0));
      },
    ),
    { numRuns: 300 },
  );
});
