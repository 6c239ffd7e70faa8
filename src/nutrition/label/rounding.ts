import type { NutrientKey } from '../nutrients.ts';

/** One step of a label rule, from the end of the step before it up to `upTo` (inclusive) or `below` (exclusive). */
interface Band {
  readonly upTo?: number;
  readonly below?: number;
  /** Round to the nearest multiple of `step`; `0` prints zero; `less_than` prints "less than …". */
  readonly prints: number | { readonly lessThan: number };
}

/** An amount as a label prints it. */
export interface LabelAmount {
  /** The printed number; for "less than 1 g" the 1. */
  readonly shown: number;
  readonly lessThan: boolean;
}

/** Amounts that a label prints the same way: from `low` up to but not including `high`. */
export interface LabelInterval {
  readonly low: number;
  readonly high: number;
}

const CALORIES: readonly Band[] = [{ below: 5, prints: 0 }, { upTo: 50, prints: 5 }, { prints: 10 }];
const FAT: readonly Band[] = [{ below: 0.5, prints: 0 }, { below: 5, prints: 0.5 }, { prints: 1 }];
const CHOLESTEROL: readonly Band[] = [
  { below: 2, prints: 0 },
  { upTo: 5, prints: { lessThan: 5 } },
  { prints: 5 },
];
const SODIUM: readonly Band[] = [{ below: 5, prints: 0 }, { upTo: 140, prints: 5 }, { prints: 10 }];
const GRAMS: readonly Band[] = [
  { below: 0.5, prints: 0 },
  { below: 1, prints: { lessThan: 1 } },
  { prints: 1 },
];
const TENTHS: readonly Band[] = [{ prints: 0.1 }];
const ONES: readonly Band[] = [{ prints: 1 }];
const TENS: readonly Band[] = [{ prints: 10 }];

/**
 * 21 CFR 101.9(c): (1) calories, (2) fats, (3) cholesterol, (4) sodium, (6) carbohydrate, fiber and sugars,
 * (7) protein; vitamins and minerals by the size of their RDI (FDA guidance on quantitative declaration, 2018).
 * Nutrients a label does not carry have no rule.
 */
const RULES: { readonly [K in NutrientKey]?: readonly Band[] } = {
  energyKcal: CALORIES,
  fatG: FAT,
  saturatedFatG: FAT,
  monounsaturatedFatG: FAT,
  polyunsaturatedFatG: FAT,
  cholesterolMg: CHOLESTEROL,
  sodiumMg: SODIUM,
  carbohydrateG: GRAMS,
  fiberG: GRAMS,
  sugarsG: GRAMS,
  addedSugarsG: GRAMS,
  proteinG: GRAMS,
  vitaminDMcg: TENTHS,
  ironMg: TENTHS,
  zincMg: TENTHS,
  vitaminB12Mcg: TENTHS,
  vitaminCMg: ONES,
  calciumMg: TENS,
  potassiumMg: TENS,
  phosphorusMg: TENS,
  magnesiumMg: TENS,
  vitaminAMcg: TENS,
  folateMcg: TENS,
};

/**
 * Nearest multiple of `step`, exact halves up (FDA Food Labeling Guide, Appendix H notes). The sliver added
 * keeps 1.15 / 0.1 = 11.499999… from reading as below half.
 * Example: `roundHalfUp(2.5, 1)` is 3.
 */
export function roundHalfUp(value: number, step: number): number {
  return Number((Math.floor(value / step + 0.5 + 1e-9) * step).toFixed(6));
}

/**
 * An amount per serving as a label prints it, in the nutrient's unit; absent where labels have no rule for it.
 * Example: `labelAmount('fatG', 1.25)` shows 1.5; `labelAmount('proteinG', 0.6)` is less than 1.
 */
export function labelAmount(key: NutrientKey, amount: number): LabelAmount | undefined {
  const rule = RULES[key];
  if (!rule || !Number.isFinite(amount) || amount < 0) return undefined;
  const band = rule.find((step) => isWithin(step, amount));
  if (!band) return undefined;
  if (typeof band.prints !== 'number') return { shown: band.prints.lessThan, lessThan: true };
  return { shown: band.prints === 0 ? 0 : roundHalfUp(amount, band.prints), lessThan: false };
}

function isWithin(band: Band, amount: number): boolean {
  if (band.upTo !== undefined) return amount <= band.upTo;
  return band.below === undefined || amount < band.below;
}

/**
 * What may stand behind a printed figure: "24 g protein" was 23.5 up to 24.5 g before rounding.
 * A figure no label could print is taken as exact. Absent where labels have no rule for the nutrient.
 */
export function labelInterval(key: NutrientKey, printed: number): LabelInterval | undefined {
  const rule = RULES[key];
  if (!rule || !Number.isFinite(printed) || printed < 0) return undefined;
  let from = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (const band of rule) {
    const to = band.upTo ?? band.below ?? Number.POSITIVE_INFINITY;
    const part = behind(band, from, to, printed);
    if (part) {
      low = Math.min(low, part.low);
      high = Math.max(high, part.high);
    }
    from = to;
  }
  return high > low ? { low, high } : { low: printed, high: printed };
}

function behind(band: Band, from: number, to: number, printed: number): LabelInterval | undefined {
  if (band.prints === 0) return printed === 0 ? { low: from, high: to } : undefined;
  if (typeof band.prints !== 'number') {
    return printed > from && printed < to ? { low: from, high: to } : undefined;
  }
  if (Math.abs(roundHalfUp(printed, band.prints) - printed) > 1e-6) return undefined;
  const low = Math.max(from, printed - band.prints / 2);
  const high = Math.min(to, printed + band.prints / 2);
  return high > low ? { low, high } : undefined;
}
