import { describe, expect, test } from 'vitest';
import { DAILY_VALUES, percentDailyValue } from '../../src/nutrition/label/daily-values.ts';
import type { NutrientKey } from '../../src/nutrition/nutrients.ts';

describe('Daily Values, 21 CFR 101.9(c)(8)(iv) and (c)(9), 2016 rule', () => {
  test.each<[source: string, key: NutrientKey, amount: number]>([
    ['N-19a, fat 78 g (2016 rule, as reported in the trade)', 'fatG', 78],
    ['N-19a, saturated fat 20 g (unchanged from the older table)', 'saturatedFatG', 20],
    ['N-19a, cholesterol 300 mg (unchanged from the older table)', 'cholesterolMg', 300],
    ['N-19a, carbohydrate 275 g (known from memory)', 'carbohydrateG', 275],
    ['N-19a, fiber 28 g', 'fiberG', 28],
    ['N-19a, added sugars 50 g', 'addedSugarsG', 50],
    ['N-19a, sodium 2 300 mg', 'sodiumMg', 2300],
    ['N-19c, vitamin D 20 mcg (known from memory)', 'vitaminDMcg', 20],
    ['N-19c, calcium 1 300 mg', 'calciumMg', 1300],
    ['N-19c, iron 18 mg', 'ironMg', 18],
    ['N-19c, potassium 4 700 mg', 'potassiumMg', 4700],
    ['N-19d, vitamin A 900 mcg RAE (known from memory)', 'vitaminAMcg', 900],
    ['N-19d, vitamin C 90 mg (known from memory)', 'vitaminCMg', 90],
    ['N-19d, folate 400 mcg DFE (known from memory)', 'folateMcg', 400],
    ['N-19d, vitamin B12 2.4 mcg (known from memory)', 'vitaminB12Mcg', 2.4],
    ['N-19e, phosphorus 1 250 mg (known from memory)', 'phosphorusMg', 1250],
    ['N-19e, magnesium 420 mg (known from memory)', 'magnesiumMg', 420],
    ['N-19e, zinc 11 mg (known from memory)', 'zincMg', 11],
  ])('%s', (_source, key, amount) => {
    expect(DAILY_VALUES[key]?.amount).toBe(amount);
  });

  test('N-19b: 78 g fat is 35 % of 2 000 kcal, 275 g carbohydrate 55 %, 50 g added sugars 10 %', () => {
    const share = (key: NutrientKey, kcal: number) => ((DAILY_VALUES[key]?.amount ?? 0) * kcal) / 2000;
    expect(share('fatG', 9)).toBeCloseTo(0.35, 2);
    expect(share('carbohydrateG', 4)).toBeCloseTo(0.55, 9);
    expect(share('addedSugarsG', 4)).toBeCloseTo(0.1, 9);
  });

  test('N-16 and N-17: total sugars have none, and protein none without a quality correction', () => {
    expect(percentDailyValue('sugarsG', 12)).toBeUndefined();
    expect(percentDailyValue('proteinG', 20)).toBeUndefined();
  });
});

describe('percent Daily Value', () => {
  test('W-25: macronutrients to the nearest whole percent, 101.9(d)(7)(ii)', () => {
    const percents = [
      percentDailyValue('fatG', 9),
      percentDailyValue('sodiumMg', 230),
      percentDailyValue('carbohydrateG', 27),
      percentDailyValue('fiberG', 3),
      percentDailyValue('addedSugarsG', 11),
    ];
    expect(percents).toEqual([12, 10, 10, 11, 22]);
  });

  test('W-26 and N-14: worked from the amount before rounding, 5.4 g fat is 7 %', () => {
    expect(percentDailyValue('fatG', 5.4)).toBe(7);
  });

  test('W-27: vitamins and minerals step by 2, 5 and 10, 101.9(c)(8)(iii)', () => {
    const percents = [
      percentDailyValue('ironMg', 2.3),
      percentDailyValue('calciumMg', 141),
      percentDailyValue('potassiumMg', 350),
      percentDailyValue('potassiumMg', 50),
      percentDailyValue('vitaminDMcg', 12),
    ];
    expect(percents).toEqual([15, 10, 8, 0, 60]);
  });

  test('W-30: 27 g carbohydrate is 10 % now; a printed 9 % came from the older 300 g', () => {
    expect(percentDailyValue('carbohydrateG', 27)).toBe(10);
    expect(Math.round((27 / 300) * 100)).toBe(9);
  });
});
