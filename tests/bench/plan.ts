import { fileURLToPath } from 'node:url';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { rosterEaters } from '../../src/kitchen/production/eaters.ts';
import { productionPlan } from '../../src/kitchen/production/production-plan.ts';
import type { PersonNeeds } from '../../src/kitchen/roster/roster.ts';
import { calendarDate, clockTime, instantOf } from '../../src/kitchen/time/zone.ts';
import { NEEDS } from '../../src/nutrition/allergens.ts';
import { loadedPackages } from './loaded-packages.ts';
import { median, type Row, timings } from './row.ts';

const MOST_MS = 200;
const ATHLETES = 120;

/** 120 athletes of whom every third has one, two or three needs, other ones every time so that nothing is remembered. */
function athletes(turn: number): PersonNeeds[] {
  const need = (at: number) => NEEDS[(at * 7 + turn) % 14];
  return Array.from({ length: ATHLETES }, (_, i) => ({
    code: `XC-${i}`,
    avoid:
      i % 3 === 0
        ? [i, i + 5, i + 11].slice(0, 1 + (i % 2) + (i % 4 === 0 ? 1 : 0)).flatMap((at) => need(at) ?? [])
        : [],
    foods: i % 40 === 0 ? ['kiwi'] : [],
    likes: [],
    toldBy: 'file' as const,
    updatedMs: 0,
  }));
}

/** A plan for a department, and whether the solver stays out of a request that needs none. */
export async function planRate({ book }: Kitchen): Promise<Row> {
  const { timeZone } = book.settings;
  const at = (day: string, time: string) =>
    instantOf({ date: calendarDate(day), time: clockTime(time) }, timeZone);
  let turn = 0;
  const once = async (): Promise<void> => {
    const plan = await productionPlan({
      book,
      eaters: rosterEaters(ATHLETES, athletes(turn++), 1),
      date: calendarDate('2026-12-05'),
      packAtMs: at('2026-12-05', '08:00'),
      nowMs: at('2026-12-02', '10:00'),
      holdings: [],
      promised: new Map(),
      openLabels: new Set(),
      madeLately: new Set(),
    });
    if (plan.people !== ATHLETES || plan.variants.length === 0) throw new Error('nothing was planned');
  };
  await timings(once, 1_000, 5);
  const each = median(await timings(once, 4_000, 60));
  const main = fileURLToPath(new URL('main.js', import.meta.url));
  const loads = loadedPackages(main, ['40 oat bars']).includes('highs');
  return {
    what: `a plan for ${ATHLETES} athletes`,
    measured: `${each.toFixed(0)} ms median`,
    beside: loads ? '"40 oat bars" loads the solver' : '"40 oat bars" loads no solver',
    target: `at most ${MOST_MS} ms`,
    met: each <= MOST_MS && !loads,
  };
}
