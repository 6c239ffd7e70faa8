import { describe, expect, test } from 'vitest';
import { convert } from '../../src/nutrition/portion/convert.ts';
import { massOf } from '../../src/nutrition/portion/mass-of.ts';
import {
  BUTTER,
  EGG,
  HONEY,
  makeFood,
  OATS,
  PEA_PROTEIN,
  PEANUT_BUTTER,
  STRAWBERRY,
  WHEY,
} from '../helpers/measured-foods.ts';

describe("a volume becomes grams through the food's own portion", () => {
  test('2 cups of oats is twice its cup, and says so', () => {
    expect(massOf(OATS, 2, 'cup')).toMatchObject({ massG: 162, said: '1 cup = 81 g' });
  });

  test('a tablespoon portion serves a cup by the exact ratio', () => {
    expect(massOf(PEANUT_BUTTER, 0.5, 'cup').massG).toBeCloseTo(128, 10);
  });

  test('the nearest portion is used: spoon for spoons, cup for cups', () => {
    expect(massOf(HONEY, 2, 'tbsp').massG).toBe(42);
    expect(massOf(HONEY, 0.5, 'cup').massG).toBeCloseTo(169.5, 10);
    expect(massOf(HONEY, 0.5, 'cup').said).toBe('1 cup = 339 g');
  });

  test('a cut that is asked for is used, another cut only when there is none', () => {
    expect(massOf(STRAWBERRY, 1, 'cup', 'sliced').massG).toBe(166);
    expect(massOf(STRAWBERRY, 1, 'cup').massG).toBe(152);
  });

  test('a numbered scoop is its exact share of a quart', () => {
    expect(massOf(OATS, 16, 'disher_16').massG).toBeCloseTo(4 * 81, 9);
  });

  test('a label cup is larger than a kitchen cup', () => {
    expect(massOf(OATS, 1, 'label_cup').massG).toBeCloseTo((81 * 240) / 236.5882365, 9);
  });

  test('without a portion it asks for grams instead of guessing a density', () => {
    expect(() => massOf(PEA_PROTEIN, 1, 'cup')).toThrowError(
      expect.objectContaining({ code: 'no_portion', hint: expect.stringContaining('grams') }),
    );
  });
});

describe('weights and words of the food', () => {
  test('a weight is exact and needs no portion', () => {
    expect(massOf(PEA_PROTEIN, 12, 'oz').massG).toBeCloseTo(340.1942775, 9);
    expect(massOf(PEA_PROTEIN, 2, '#').massG).toBeCloseTo(907.18474, 9);
  });

  test('an egg without a size is a large one', () => {
    expect(massOf(EGG, 2, '').massG).toBe(100);
    expect(massOf(EGG, 2, 'eggs').massG).toBe(100);
    expect(massOf(EGG, 2, 'medium').massG).toBe(88);
  });

  test("sticks and scoops are the food's own", () => {
    expect(massOf(BUTTER, 2, 'sticks').massG).toBe(226);
    expect(massOf(WHEY, 4, 'scoop').massG).toBe(120);
    expect(() => massOf(OATS, 1, 'stick')).toThrowError(expect.objectContaining({ code: 'no_portion' }));
  });

  test('a jar is what the price list says a jar is, also out of a case', () => {
    const cased = makeFood(
      'jam',
      [],
      {},
      {
        price: { priceCents: 1, packageG: 5448, packageName: '12 x 16 oz jar', section: 'dry' },
      },
    );
    expect(massOf(PEANUT_BUTTER, 2, 'jars').massG).toBe(908);
    expect(massOf(cased, 1, 'jar').massG).toBe(454);
    expect(massOf(cased, 1, 'case').massG).toBe(5448);
  });

  test('a word nobody knows is an unknown unit, and a wild amount is refused', () => {
    expect(() => massOf(OATS, 1, 'furlong')).toThrowError(expect.objectContaining({ code: 'unknown_unit' }));
    for (const amount of [Number.NaN, -1, Number.POSITIVE_INFINITY, 1e9]) {
      expect(() => massOf(OATS, amount, 'cup')).toThrowError(
        expect.objectContaining({ code: 'bad_quantity' }),
      );
    }
  });
});

describe('conversions', () => {
  test('volume to volume needs no food', () => {
    expect(convert(16, 'T', 'cup').amount).toBe(1);
  });

  test('volume to grams goes through the food, either way', () => {
    expect(convert(2, 'Tbs', 'g', HONEY).amount).toBe(42);
    expect(convert(243, 'g', 'cup', OATS).amount).toBeCloseTo(3, 12);
  });

  test('without a food, weight and volume do not mix', () => {
    expect(() => convert(8, 'oz', 'cup')).toThrowError(expect.objectContaining({ code: 'needs_more' }));
  });
});
