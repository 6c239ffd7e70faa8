import type { Profile } from '../../nutrition/cover/profile.ts';
import type { Variant } from '../../nutrition/cover/variant.ts';
import type { Holding } from '../stock/ledger.ts';
import { usableAt } from '../stock/usable.ts';
import type { CalendarDate } from '../time/zone.ts';

/** Pieces of one batch that are handed out instead of new ones. */
export interface FromStock {
  readonly code: string;
  readonly pieces: number;
  readonly useBy?: CalendarDate;
}

export interface OnHandQuestion {
  readonly holdings: readonly Holding[];
  /** Pieces of a recipe, by id, that games before this day will take. */
  readonly promised: ReadonlyMap<string, number>;
  /** The day they are eaten: a use-by before it does not serve. */
  readonly date: CalendarDate;
  /** Epoch milliseconds; they must be set and in cold store then. */
  readonly packAtMs: number;
  readonly timeZone: string;
}

/** What is in stock for a day. What ends first goes first, to the games before it, then to this one. */
export interface OnHand {
  /** Takes at most `wanted` pieces that are the same as the variant and stood clear of what these people avoid when made. */
  take(variant: Variant, avoided: Profile, wanted: number): readonly FromStock[];
}

/** The stock that may be planned with. */
export function onHandFor(question: OnHandQuestion): OnHand {
  const left = unpromised(question);
  return {
    take(variant, avoided, wanted) {
      const taken: FromStock[] = [];
      let missing = wanted;
      for (const share of left) {
        const pieces = Math.min(share.pieces, missing);
        if (pieces <= 0 || !serves(share.holding, variant, avoided)) continue;
        share.pieces -= pieces;
        missing -= pieces;
        const { batch, useBy } = share.holding;
        taken.push({ code: batch.code, pieces, ...(useBy === undefined ? {} : { useBy }) });
      }
      return taken;
    },
  };
}

function unpromised({ holdings, promised, date, packAtMs, timeZone }: OnHandQuestion): {
  readonly holding: Holding;
  pieces: number;
}[] {
  const owed = new Map(promised);
  return holdings
    .filter((holding) => usableAt(holding, packAtMs, timeZone) && (holding.useBy ?? date) >= date)
    .sort((a, b) => ((a.useBy ?? '9999') < (b.useBy ?? '9999') ? -1 : 1))
    .map((holding) => {
      const { recipeId } = holding.batch;
      const gone = Math.min(owed.get(recipeId) ?? 0, holding.pieces);
      owed.set(recipeId, (owed.get(recipeId) ?? 0) - gone);
      return { holding, pieces: holding.pieces - gone };
    });
}

/** The same foods from the same card, and nothing known when it was made that speaks against any of the needs. */
function serves({ batch }: Holding, { card, recipe }: Variant, { avoid }: Profile): boolean {
  if (batch.recipeId !== card.id) return false;
  const made = new Set(batch.facts.ingredients.map(({ foodId }) => foodId));
  const planned = new Set(recipe.lines.map(({ foodId }) => foodId));
  const isSame = made.size === planned.size && [...planned].every((id) => made.has(id));
  return isSame && avoid.every((need) => batch.facts.verdicts[need] === 'clear_by_label');
}
