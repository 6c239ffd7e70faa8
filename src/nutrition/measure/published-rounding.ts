/** Grams of an avoirdupois ounce, exact (NIST HB 44 App. C). */
export const OUNCE_G = 28.349_523_125;
const OUNCES_PER_LB = 16;

/**
 * Pounds and ounces of a decimal weight by the Armed Forces Recipe Service: the ounce remainder goes to the nearest
 * quarter by its bands .13 .38 .63 .88 (AFRS TM 10-412, card A-1(2), 2003).
 * @example afrsPounds(4.35) // { pounds: 4, ounces: 5.5 }
 */
export function afrsPounds(pounds: number): { readonly pounds: number; readonly ounces: number } {
  const whole = Math.floor(pounds + 1e-9);
  const remainder = Math.max(0, (pounds - whole) * OUNCES_PER_LB);
  const hundredths = Math.round(remainder * 100);
  const ounces = Math.floor(hundredths / 100) + afrsQuarter(hundredths % 100);
  return ounces >= OUNCES_PER_LB ? { pounds: whole + 1, ounces: 0 } : { pounds: whole, ounces };
}

/** The bands as printed, in hundredths of an ounce. */
function afrsQuarter(hundredths: number): number {
  if (hundredths <= 12) return 0;
  if (hundredths <= 37) return 0.25;
  if (hundredths <= 62) return 0.5;
  return hundredths <= 87 ? 0.75 : 1;
}

/**
 * Ounces rounded by the ICN "rounding off weights and measures" guide: to 10 oz the quarter, to 2 lb 8 oz the half,
 * to 5 lb the ounce, above the quarter pound.
 * @example guideOunces(14.3) // 14.5
 */
export function guideOunces(ounces: number): number {
  const step = ounces <= 10 ? 0.25 : ounces < 40 ? 0.5 : ounces <= 80 ? 1 : 4;
  return Math.round(ounces / step) * step;
}

/** Teaspoons in a cup, a quart and a gallon. */
const CUP = 48;
const QUART = 192;
const GALLON = 768;

/**
 * Teaspoons rounded by the same guide. Where ratios matter (baking) the whole cup is kept above two gallons.
 * The band from 3/4 cup to 2 cups (whole Tbsp) is known from memory.
 * @example guideTeaspoons(24.6) // 25
 */
export function guideTeaspoons(tsp: number, baked = false): number {
  const step = guideStep(tsp, baked);
  return Math.round(tsp / step) * step;
}

function guideStep(tsp: number, baked: boolean): number {
  if (tsp < 3) return 1 / 8;
  if (tsp < 9) return 1 / 4;
  if (tsp <= CUP / 2) return 1 / 2;
  if (tsp < (CUP * 3) / 4) return 1;
  if (tsp < CUP * 2) return 3;
  if (tsp <= QUART * 2) return CUP / 4;
  if (tsp < GALLON) return CUP / 2;
  if (tsp <= GALLON * 2 || baked) return CUP;
  if (tsp < GALLON * 10) return QUART;
  return tsp <= GALLON * 20 ? GALLON / 2 : GALLON;
}
