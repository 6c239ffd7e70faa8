import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseMeasure } from '../../src/nutrition/portion/parse-measure.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { parseQuantity } from '../../src/nutrition/quantity/parse-quantity.ts';
import { readUnit } from '../../src/nutrition/units/unit.ts';

const RUNS = { numRuns: Number(process.env.FC_RUNS ?? 1_000) };

/** The Problem something throws; anything else it throws is a failure of the test. */
const problemOf = (act: () => unknown): Problem | undefined => {
  try {
    act();
    return undefined;
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
};

describe('an amount is read exactly', () => {
  test.each<[string, number, number]>([
    ['12', 12, 1],
    ['1 1/2', 3, 2],
    ['½', 1, 2],
    ['1½', 3, 2],
    ['1-1/2', 3, 2],
    ['1⁄3', 1, 3],
    ['2 / 3', 2, 3],
    ['1.5', 3, 2],
    ['.25', 1, 4],
    ['1,000', 1000, 1],
    ['12,500', 12500, 1],
    ['a dozen', 12, 1],
    ['2 dozen', 24, 1],
    ['half a dozen', 6, 1],
    ['a dozen and a half', 18, 1],
    ['half', 1, 2],
    ['a half', 1, 2],
    ['a', 1, 1],
    ['two and a half', 5, 2],
    ['three quarters', 3, 4],
    ['two thirds', 2, 3],
    ['one and one half', 3, 2],
    ['1 and 1/2', 3, 2],
    ['forty', 40, 1],
    ['forty-four', 44, 1],
    ['twenty four', 24, 1],
    ['a couple', 2, 1],
    ['0', 0, 1],
    ['007', 7, 1],
  ])('%j is %i/%i', (text, numerator, denominator) => {
    expect(parseQuantity(text).exact).toEqual({ numerator, denominator });
  });

  test.each<[string, number, number]>([
    ['2-3', 2, 3],
    ['2–3', 2, 3],
    ['2 to 3', 2, 3],
    ['1 1/2 - 2', 1.5, 2],
    ['½ to ¾', 0.5, 0.75],
    ['two or three', 2, 3],
  ])('%j is a range', (text, least, most) => {
    const quantity = parseQuantity(text);
    expect([quantity.amount, quantity.most?.amount]).toEqual([least, most]);
  });

  test('"about 3" and "a couple" are marked approximate, "3" is not', () => {
    expect(parseQuantity('about 3')).toMatchObject({ amount: 3, approximate: true });
    expect(parseQuantity('a couple')).toMatchObject({ amount: 2, approximate: true });
    expect(parseQuantity('3').approximate).toBe(false);
  });
});

describe('what is no amount gets a problem that says what to write', () => {
  test.each([
    '',
    '   ',
    '1/0',
    '0/0',
    'NaN',
    'nan',
    '-3',
    '−3',
    '1e9',
    '1E5',
    'Infinity',
    '9999999',
    '999999999999999',
    '3-2',
    '1 2',
    '1/2/3',
    'x',
    '1..2',
    '5 5/4',
    '½½',
    'a banana',
    '1/2 1/3',
    '#',
    '+',
    '/',
    'null',
    '0x10',
    '1'.repeat(61),
    '\u202e12',
    '<!channel>',
    'and',
    'of a dozen eggs',
  ])('%j', (text) => {
    const problem = problemOf(() => parseQuantity(text));
    expect(problem?.code).toBe('bad_quantity');
    expect(problem?.hint).toContain('Write');
  });

  test('no text of any kind makes the parsers throw anything but a Problem, or return a wild number', () => {
    const pieces = fc.constantFrom(
      ...'0123456789',
      ' ',
      ' ',
      '/',
      '-',
      '.',
      ',',
      '½',
      '⅓',
      'a',
      'an',
      'and',
      'half',
      'dozen',
      'two',
      'twenty',
      'T',
      'tbsp',
      'cup',
      'fl oz',
      '#',
      'to',
      'e',
      '\u0000',
      '\u202e',
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (typed) => {
        for (const read of [() => parseQuantity(typed), () => parseMeasure(typed).quantity]) {
          let quantity: ReturnType<typeof parseQuantity> | undefined;
          const problem = problemOf(() => {
            quantity = read();
          });
          expect(problem === undefined).toBe(quantity !== undefined);
          if (!quantity) continue;
          expect(quantity.amount).toBeGreaterThanOrEqual(0);
          expect(quantity.amount).toBeLessThanOrEqual(1_000_000);
          expect(Number.isSafeInteger(quantity.exact.numerator)).toBe(true);
          expect(quantity.exact.denominator).toBeGreaterThan(0);
          expect(quantity.exact.numerator / quantity.exact.denominator).toBeCloseTo(quantity.amount, 9);
        }
      }),
      RUNS,
    );
  });

  test('every mixed number reads back as itself', () => {
    const whole = fc.integer({ min: 0, max: 500 });
    const part = fc
      .tuple(fc.integer({ min: 1, max: 15 }), fc.integer({ min: 2, max: 16 }))
      .filter(([n, d]) => n < d);
    fc.assert(
      fc.property(whole, part, (count, [n, d]) => {
        const amount = parseQuantity(`${count} ${n}/${d}`).exact;
        expect(amount.numerator * d).toBe((count * d + n) * amount.denominator);
      }),
      RUNS,
    );
  });
});

describe('units are read as people write them', () => {
  test.each<[string, string]>([
    ['T', 'tbsp'],
    ['Tbs', 'tbsp'],
    ['Tbsp', 'tbsp'],
    ['Tbsp.', 'tbsp'],
    ['TBSP', 'tbsp'],
    ['tablespoons', 'tbsp'],
    ['t', 'tsp'],
    ['tsp', 'tsp'],
    ['Tsp', 'tsp'],
    ['c', 'cup'],
    ['C', 'cup'],
    ['#', 'lb'],
    ['lbs', 'lb'],
    ['oz', 'oz'],
    ['fl oz', 'floz'],
    ['fl. oz.', 'floz'],
    ['floz', 'floz'],
    ['qt', 'quart'],
    ['gal', 'gallon'],
    ['mL', 'ml'],
    ['L', 'l'],
    ['grams', 'g'],
    ['kg', 'kg'],
    ['pinches', 'pinch'],
    ['dash', 'dash'],
    ['sticks', 'stick'],
    ['scoops', 'scoop'],
    ['No. 16 scoop', 'disher_16'],
    ['#30 scoop', 'disher_30'],
    ['label cup', 'label_cup'],
    ['metric cup', 'metric_cup'],
  ])('%s is %s', (written, id) => {
    expect(readUnit(written)?.id).toBe(id);
  });

  test.each(['', 'furlong', 'cupp of', 'no 17 scoop', 'x'.repeat(40), '__proto__', 'constructor'])(
    '%j is none',
    (written) => {
      expect(readUnit(written)).toBeUndefined();
    },
  );
});

describe('an amount with its unit', () => {
  test.each<[string, number, string | undefined]>([
    ['1 1/2 cups', 1.5, 'cup'],
    ['½ c', 0.5, 'cup'],
    ['200g', 200, 'g'],
    ['2#', 2, 'lb'],
    ['2 T', 2, 'tbsp'],
    ['2t', 2, 'tsp'],
    ['a dozen', 12, undefined],
    ['3 large', 3, 'large'],
    ['2 No. 16 scoops', 2, 'disher_16'],
    ['two and a half cups', 2.5, 'cup'],
    ['8 fl oz', 8, 'floz'],
    ['cup', 1, 'cup'],
    ['a pinch', 1, 'pinch'],
    ['half a stick', 0.5, 'stick'],
    ['40', 40, undefined],
    ['1,000 g', 1000, 'g'],
  ])('%j', (text, amount, unit) => {
    const measure = parseMeasure(text);
    expect([measure.quantity.amount, measure.unit?.id]).toEqual([amount, unit]);
  });

  test("a word that is no unit is kept as the food's own word", () => {
    expect(parseMeasure('2 bananas')).toMatchObject({ quantity: { amount: 2 }, word: 'bananas' });
  });
});
