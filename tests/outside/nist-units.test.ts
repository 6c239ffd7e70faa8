import { describe, expect, test } from 'vitest';
import { convert } from '../../src/nutrition/portion/convert.ts';
import { DISHERS, disherTsp } from '../../src/nutrition/units/dishers.ts';
import { readUnit, unitById } from '../../src/nutrition/units/unit.ts';
import { FIXED_UNITS } from '../../src/nutrition/units/unit-table.ts';

const sizeOf = (id: string): number | undefined => FIXED_UNITS.find((unit) => unit.id === id)?.size;

describe('exact sizes', () => {
  test.each<[string, number, string]>([
    ['gallon', 3785.411784, 'NIST HB 44 App. C (231 cubic inches)'],
    ['quart', 946.352946, 'NIST HB 44 App. C'],
    ['pint', 473.176473, 'NIST HB 44 App. C'],
    ['cup', 236.5882365, 'NIST HB 44 App. C (1/16 gal)'],
    ['floz', 29.5735295625, 'NIST HB 44 App. C'],
    ['tbsp', 14.78676478125, 'NIST HB 44 App. C'],
    ['tsp', 4.92892159375, 'NIST HB 44 App. C'],
    ['oz', 28.349523125, 'NIST HB 44 App. C'],
    ['lb', 453.59237, 'NIST HB 44 App. C'],
    ['label_cup', 240, '21 CFR 101.9(b)(5)(viii)'],
    ['label_tbsp', 15, '21 CFR 101.9(b)(5)(viii)'],
    ['label_tsp', 5, '21 CFR 101.9(b)(5)(viii)'],
    ['label_floz', 30, '21 CFR 101.9(b)(5)(viii)'],
    ['label_oz', 28, '21 CFR 101.9(b)(5)(viii)'],
    ['metric_cup', 250, 'national metric practice, from memory'],
  ])('one %s is %f (%s)', (id, size) => {
    expect(sizeOf(id)).toBeCloseTo(size, 10);
  });

  // NIST SP 430, metric household table (U-08).
  test.each<[number, string, string, number]>([
    [3, 'tsp', 'tbsp', 1],
    [2, 'tbsp', 'floz', 1],
    [16, 'tbsp', 'cup', 1],
    [2, 'cup', 'pint', 1],
    [2, 'pint', 'quart', 1],
    [4, 'quart', 'gallon', 1],
    [16, 'oz', 'lb', 1],
  ])('%f %s in %s is %f', (amount, from, to, expected) => {
    expect(convert(amount, from, to).amount).toBeCloseTo(expected, 12);
  });

  test('1/3 cup is 5 Tbsp + 1 tsp, 2/3 cup 10 Tbsp + 2 tsp (ICN Basics at a Glance, U-09)', () => {
    expect(convert(1 / 3, 'cup', 'tsp').amount).toBeCloseTo(16, 12);
    expect(convert(2 / 3, 'cup', 'tsp').amount).toBeCloseTo(32, 12);
  });
});

describe('the kitchen set and the label set stay apart', () => {
  test('a cup is 236.588 mL in the kitchen and 240 mL on a label (W-01: NIST; 21 CFR 101.9(b)(5)(viii))', () => {
    expect(convert(1, 'cup', 'ml').amount).toBeCloseTo(236.5882365, 9);
    expect(convert(1, 'label cup', 'ml').amount).toBe(240);
  });

  test('12 oz is 340.194 g weighed and 336 g on a label (W-02, derived)', () => {
    expect(convert(12, 'oz', 'g').amount).toBeCloseTo(340.1942775, 9);
    expect(convert(12, 'label oz', 'g').amount).toBe(336);
  });
});

describe('numbered scoops (ICN Basics at a Glance, note 1: level scoops per quart)', () => {
  test('8 scoops of No. 8 in a quart (W-07)', () => {
    expect(convert(1, 'quart', 'No. 8 scoop').amount).toBeCloseTo(8, 12);
  });

  test('50 portions with a No. 16 are 12 1/2 cups (W-08, derived)', () => {
    expect(convert(50, 'No. 16 scoop', 'cup').amount).toBeCloseTo(12.5, 12);
  });

  test("100 portions with a No. 30 are 106.67 fl oz; the chart's 2 Tbsp is 6.25 % short (W-09, derived)", () => {
    expect(convert(100, 'No. 30 scoop', 'fl oz').amount).toBeCloseTo(106.667, 3);
    expect(1 - 6 / disherTsp(30)).toBeCloseTo(0.0625, 12);
  });

  // Exact tsp of U-21 to U-33 and the chart's own value; the chart rounds by up to 6.3 %.
  test.each(DISHERS.map(({ number, chartTsp }) => [number, chartTsp] as const))(
    'No. %i is near its chart value',
    (number, chartTsp) => {
      expect(readUnit(`No. ${number} scoop`)?.id).toBe(`disher_${number}`);
      expect(unitById(`disher_${number}`)).toMatchObject({ kind: 'volume' });
      expect(Math.abs(chartTsp / disherTsp(number) - 1)).toBeLessThan(0.0635);
    },
  );
});
