import type { Mix } from './mix.ts';
import { type FoodLimit, USUAL_RANGE } from './question.ts';

/** Between which grams a line may go. */
export interface Range {
  readonly leastG: number;
  readonly mostG: number;
  readonly wholeG?: number;
  readonly package?: FoodLimit['package'];
  /** Said by the person: rounding to a measure may not pass it. */
  readonly strict?: true;
}

/** Roles whose amount is a matter of chemistry and taste: they stay as the recipe has them. Common practice, no source. */
const KEPT_ROLES = new Set(['leavening', 'flavor']);

/**
 * The range of every line. What a person says of a food counts instead of the usual range; a food on several lines
 * has its limits shared out by what each line holds now.
 */
export function rangesOf(mix: Mix, foodLimits: readonly FoodLimit[]): Range[] {
  return mix.lines.map(({ food, line, baseG }) => {
    const said = foodLimits.find(({ foodId }) => foodId === food.id);
    if (said?.fixed) return { leastG: baseG, mostG: baseG };
    const kept = KEPT_ROLES.has(line.role) && !said;
    const usual = {
      leastG: kept ? baseG : baseG * USUAL_RANGE.least,
      mostG: kept ? baseG : baseG * USUAL_RANGE.most,
    };
    if (!said) return usual;
    const share = baseG / foodG(mix, food.id);
    const leastG = said.leastG === undefined ? usual.leastG : said.leastG * share;
    const mostG = said.mostG === undefined ? usual.mostG : said.mostG * share;
    return {
      leastG: said.leastG === undefined ? Math.min(leastG, mostG) : leastG,
      mostG: said.mostG === undefined ? Math.max(leastG, mostG) : mostG,
      ...(said.wholeG !== undefined && said.wholeG > 0
        ? { wholeG: said.wholeG, ...(said.package ? { package: said.package } : {}) }
        : {}),
      strict: true,
    };
  });
}

const foodG = (mix: Mix, foodId: string): number =>
  mix.lines.reduce((sum, { food, baseG }) => sum + (food.id === foodId ? baseG : 0), 0);
