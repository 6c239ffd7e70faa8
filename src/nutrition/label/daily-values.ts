import type { NutrientKey } from '../nutrients.ts';
import { roundHalfUp } from './rounding.ts';

/** A Daily Value for adults and children of 4 years and more, in the nutrient's unit. */
export interface DailyValue {
  readonly amount: number;
  readonly kind: 'macronutrient' | 'vitamin_or_mineral';
  /** Paragraph of 21 CFR 101.9 that lists it. */
  readonly source: string;
}

const macronutrient = (amount: number): DailyValue => ({
  amount,
  kind: 'macronutrient',
  source: '21 CFR 101.9(c)(9)',
});
const micronutrient = (amount: number): DailyValue => ({
  amount,
  kind: 'vitamin_or_mineral',
  source: '21 CFR 101.9(c)(8)(iv)',
});

/**
 * Daily Values of the 2016 rule. Total sugars and trans fat have none. Protein's 50 g applies to protein
 * corrected for quality, which food tables do not give, so protein is left out.
 */
export const DAILY_VALUES: { readonly [K in NutrientKey]?: DailyValue } = {
  fatG: macronutrient(78),
  saturatedFatG: macronutrient(20),
  cholesterolMg: macronutrient(300),
  carbohydrateG: macronutrient(275),
  fiberG: macronutrient(28),
  addedSugarsG: macronutrient(50),
  sodiumMg: macronutrient(2300),
  vitaminDMcg: micronutrient(20),
  calciumMg: micronutrient(1300),
  ironMg: micronutrient(18),
  potassiumMg: micronutrient(4700),
  vitaminAMcg: micronutrient(900),
  vitaminCMg: micronutrient(90),
  folateMcg: micronutrient(400),
  vitaminB12Mcg: micronutrient(2.4),
  phosphorusMg: micronutrient(1250),
  magnesiumMg: micronutrient(420),
  zincMg: micronutrient(11),
};

/**
 * Percent of the Daily Value as printed, worked from the amount BEFORE rounding (21 CFR 101.9(d)(7)(ii) allows
 * either; one is fixed here). Vitamins and minerals step by 2, 5 or 10 (101.9(c)(8)(iii)). Absent without a DV.
 * Example: `percentDailyValue('sodiumMg', 230)` is 10; iron 2.3 mg (12.8 %) prints 15.
 */
export function percentDailyValue(key: NutrientKey, amount: number): number | undefined {
  const daily = DAILY_VALUES[key];
  if (!daily || !Number.isFinite(amount) || amount < 0) return undefined;
  const percent = (amount / daily.amount) * 100;
  return daily.kind === 'macronutrient' ? roundHalfUp(percent, 1) : micronutrientPercent(percent);
}

function micronutrientPercent(percent: number): number {
  if (percent < 2) return 0;
  if (percent <= 10) return roundHalfUp(percent, 2);
  return roundHalfUp(percent, percent <= 50 ? 5 : 10);
}
