import type { Eaters } from '../../../kitchen/production/eaters.ts';
import type { ProductionPlan } from '../../../kitchen/production/production-plan.ts';
import type { Occasion } from './occasion.ts';
import { swapsText } from './variant-words.ts';
import type { WhoEats } from './who-eats.ts';

/** The figures of a plan. Instants are epoch milliseconds; `null` where nothing is made. */
export function dataOf(occasion: Occasion, plan: ProductionPlan, who: WhoEats): Record<string, unknown> {
  const groups = (eaters: readonly Eaters[]) =>
    eaters.map(({ avoid, foods, people }) => ({ avoid, foods, people }));
  return {
    date: occasion.date,
    game: occasion.game?.id ?? null,
    people: plan.people,
    unfed: groups(plan.unfed),
    unchecked: groups(plan.unchecked),
    isFewest: plan.isFewest,
    variants: plan.variants.map((each) => ({
      recipe: each.card.id,
      swaps: each.swaps.map(({ from, to, massAfterG }) => ({
        from: from.id,
        to: to?.id ?? null,
        massAfterG,
      })),
      variant: swapsText(each),
      people: each.people,
      serves: groups(each.eaters),
      needed: each.needed,
      wanted: each.wanted,
      made: each.made,
      slabs: each.slabs,
      fromStock: each.fromStock.map(({ code, pieces, useBy }) => ({ code, pieces, useBy: useBy ?? null })),
      mixes: each.work?.scaled.mixes.count ?? 0,
      startMs: each.work?.startMs ?? null,
      setMs: each.work?.setMs ?? null,
      useBy: each.work?.useBy ?? null,
    })),
    startMs: plan.startMs,
    latestStartMs: plan.latestStartMs,
    packAtMs: occasion.packAtMs,
    warnings: who.warnings,
    conflicts: plan.conflicts,
  };
}
