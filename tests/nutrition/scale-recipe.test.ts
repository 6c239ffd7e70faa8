import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Food } from '../../src/nutrition/food.ts';
import { LINE_TOLERANCE } from '../../src/nutrition/measure/kitchen-measure.ts';
import { Problem } from '../../src/nutrition/problem.ts';
import { findPan } from '../../src/nutrition/scale/pans.ts';
import { scaleRecipe } from '../../src/nutrition/scale/scale-recipe.ts';
import type { ScaleTarget } from '../../src/nutrition/scale/target.ts';
import { recipeOf } from '../helpers/foods.ts';
import {
  BUTTER,
  EGG,
  HONEY,
  MILK,
  OATS,
  PEA_PROTEIN,
  PEANUT_BUTTER,
  SALT,
  STRAWBERRY,
  WHEY,
} from '../helpers/measured-foods.ts';
import { FOODS, HALF_SHEET, PANS, QUARTER_SHEET, TEST_BAR, writtenLine } from '../helpers/scaled-recipes.ts';

const RUNS = { numRuns: Number(process.env.FC_RUNS ?? 1_000) };
const scale = (target: ScaleTarget, options = {}) =>
  scaleRecipe(TEST_BAR, FOODS, target, { pans: PANS, ...options });
const codeOf = (act: () => unknown): string | undefined => {
  try {
    act();
    return undefined;
  } catch (error) {
    if (error instanceof Problem) return error.code;
    throw error;
  }
};

describe('a recipe for 16 is scaled', () => {
  test('to 40 pieces: two and a half times, every line', () => {
    const scaled = scale({ kind: 'pieces', pieces: 40 });
    expect(scaled.factor).toBe(2.5);
    expect(scaled.lines.map((line) => line.measure.text)).toEqual([
      '2 qt + 2 cups',
      '15 scoops',
      '1 3/4 cups + 2 Tbsp',
      '1 1/4 cups',
      '1 1/4 cups',
      '1/2 tsp + 1/8 tsp',
    ]);
  });

  test('to people, batches, a spare share', () => {
    expect(scale({ kind: 'people', people: 20, piecesPerPerson: 2 }).pieces).toBe(40);
    expect(scale({ kind: 'batches', factor: 2 })).toMatchObject({ factor: 2, pieces: 32 });
    expect(scale({ kind: 'batches', factor: 0.5 }).pieces).toBe(8);
    expect(scale({ kind: 'pieces', pieces: 40 }, { spareShare: 0.1 }).pieces).toBe(44);
  });

  test('to pieces of a stated mass', () => {
    const scaled = scale({ kind: 'piece_mass', pieces: 40, pieceG: 60 });
    expect(scaled.exactPieceG).toBeCloseTo(60, 9);
    expect(scaled.pieces).toBe(40);
    expect(scale({ kind: 'piece_mass', pieceG: 60 }).exactPieceG).toBeCloseTo(60, 9);
  });

  test('as far as two jars of one ingredient go, and says what is left', () => {
    const scaled = scale({ kind: 'ingredient', foodId: 'peanut-butter', availableG: 908 });
    expect(scaled.pieces).toBe(Math.floor((908 / 192) * 16));
    expect(scaled.ingredientLeftG).toBeCloseTo(908 - (scaled.pieces / 16) * 192, 9);
  });

  test('by pan area at the same thickness', () => {
    expect(scale({ kind: 'pan', to: HALF_SHEET, count: 1 })).toMatchObject({ factor: 2, pieces: 32 });
    expect(scale({ kind: 'pan', to: findPan('full sheet', PANS), count: 1 }).factor).toBe(4);
    expect(scale({ kind: 'pan', to: findPan('9x13', PANS), count: 3 }).factor).toBe(3);
    expect(scale({ kind: 'pan', to: QUARTER_SHEET, count: 1, from: HALF_SHEET }).factor).toBe(0.5);
  });

  test("from a yield other than the recipe's, and into another number of pieces", () => {
    expect(scale({ kind: 'pieces', pieces: 40 }, { baseYield: 20 }).factor).toBe(2);
    expect(scale({ kind: 'batches', factor: 1 }, { cutInto: 8 })).toMatchObject({ factor: 1, pieces: 8 });
  });

  test('without touching the recipe', () => {
    const before = structuredClone(TEST_BAR);
    scale({ kind: 'pieces', pieces: 77 });
    expect(TEST_BAR).toEqual(before);
  });
});

describe('mixes and slabs', () => {
  test('what the bowl does not take is split into equal mixes', () => {
    const scaled = scale({ kind: 'pieces', pieces: 160 });
    expect(scaled.mixes.count).toBe(Math.ceil(scaled.exactRawG / (2500 * 1.02)));
    expect(scaled.mixes.eachG).toBeLessThan(2500 * 1.03);
    for (const line of scaled.lines) {
      expect((line.eachMix?.exactG ?? 0) * scaled.mixes.count).toBeCloseTo(line.measure.exactG, 6);
    }
  });

  test('whole pans, the rest pressed to its share, all pieces accounted for', () => {
    for (const pieces of [1, 7, 8, 12, 16, 17, 40, 60, 100, 500]) {
      const { slabs } = scale({ kind: 'pieces', pieces });
      const made = slabs?.slabs.reduce((sum, slab) => sum + slab.count * slab.pieces, 0);
      expect(made, `${pieces} pieces`).toBe(pieces);
      for (const slab of slabs?.slabs ?? []) {
        expect(slab.cut.rows * slab.cut.columns).toBe(slab.pieces + slab.cut.spare);
        expect(slab.pressedLengthIn).toBeLessThanOrEqual(slab.pan.lengthIn + 1e-9);
      }
    }
  });

  test('40 of 16 a pan: two full pans, half of a third, eight places spare', () => {
    const { slabs } = scaleRecipe(TEST_BAR, FOODS, { kind: 'pieces', pieces: 40 });
    expect(slabs).toMatchObject({ pans: 3, sparePlaces: 8 });
    expect(slabs?.slabs.map((slab) => [slab.count, slab.pieces, slab.pressedLengthIn])).toEqual([
      [2, 16, 13],
      [1, 8, 6.5],
    ]);
    expect(slabs?.slabs[0]?.cut).toMatchObject({
      rows: 4,
      columns: 4,
      pieceLengthIn: 3.25,
      pieceWidthIn: 2.25,
    });
  });
});

describe('a size beyond sense is refused with what to write', () => {
  test.each<[string, ScaleTarget]>([
    ['0 pieces', { kind: 'pieces', pieces: 0 }],
    ['-3 pieces', { kind: 'pieces', pieces: -3 }],
    ['1e9 pieces', { kind: 'pieces', pieces: 1e9 }],
    ['NaN pieces', { kind: 'pieces', pieces: Number.NaN }],
    ['endless people', { kind: 'people', people: Number.POSITIVE_INFINITY, piecesPerPerson: 1 }],
    ['0 batches', { kind: 'batches', factor: 0 }],
    ['minus a batch', { kind: 'batches', factor: -1 }],
    ['a piece of 0 g', { kind: 'piece_mass', pieces: 40, pieceG: 0 }],
    ['an ingredient it lacks', { kind: 'ingredient', foodId: 'egg', availableG: 100 }],
    ['too little of an ingredient', { kind: 'ingredient', foodId: 'honey', availableG: 1 }],
    ['no pans', { kind: 'pan', to: HALF_SHEET, count: 0 }],
  ])('%s', (_, target) => {
    expect(['bad_quantity', 'not_possible']).toContain(codeOf(() => scale(target)));
  });

  test('a pan for what needs none, a pan nobody knows', () => {
    const { pan, cut, ...noPan } = TEST_BAR;
    expect(pan && cut).toBeTruthy();
    expect(codeOf(() => scaleRecipe(noPan, FOODS, { kind: 'pan', to: HALF_SHEET, count: 1 }))).toBe(
      'needs_more',
    );
    expect(codeOf(() => findPan('the big one', PANS))).toBe('unknown_unit');
  });
});

/** Any recipe of up to eight lines, in the units its foods can be measured in. */
const anyLine = fc
  .constantFrom<[Food, string][]>(
    [OATS, 'cup'],
    [OATS, 'oz'],
    [PEANUT_BUTTER, 'tbsp'],
    [PEANUT_BUTTER, 'cup'],
    [MILK, 'cup'],
    [MILK, 'ml'],
    [HONEY, 'tbsp'],
    [EGG, 'large'],
    [WHEY, 'scoop'],
    [SALT, 'tsp'],
    [BUTTER, 'stick'],
    [STRAWBERRY, 'medium'],
    [PEA_PROTEIN, 'g'],
    [WHEY, 'g'],
  )
  .chain(([food, unit]) => {
    const most = unit === 'g' || unit === 'ml' ? 800 : unit === 'oz' ? 40 : 8;
    return fc.integer({ min: 1, max: most * 8 }).map((eighths) => writtenLine(food, eighths / 8, unit));
  });

describe('whatever is scaled to whatever size', () => {
  test('every line is within 3 % and says something, and protein is within 1 %', () => {
    fc.assert(
      fc.property(
        fc.array(anyLine, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 3000 }),
        fc.option(fc.integer({ min: 500, max: 20_000 }), { nil: undefined }),
        (lines, yieldPieces, pieces, bowlG) => {
          const recipe = recipeOf('any', lines, { yieldPieces, ...(bowlG === undefined ? {} : { bowlG }) });
          const scaled = scaleRecipe(recipe, FOODS, { kind: 'pieces', pieces });
          let proteinG = 0;
          let exactProteinG = 0;
          for (const line of scaled.lines) {
            const perG = (line.food.per100g.proteinG ?? 0) / 100;
            for (const measure of [line.measure, line.eachMix ?? line.measure]) {
              expect(Math.abs(measure.deviation)).toBeLessThanOrEqual(LINE_TOLERANCE + 1e-9);
              expect(measure.massG).toBeGreaterThan(0);
              expect(measure.text).toMatch(/[1-9]/);
              expect(measure.text).not.toMatch(/NaN|undefined|Infinity/);
            }
            proteinG += (line.eachMix ? line.eachMix.massG * scaled.mixes.count : line.measure.massG) * perG;
            exactProteinG += line.measure.exactG * perG;
          }
          if (exactProteinG > 0)
            expect(Math.abs(proteinG / exactProteinG - 1)).toBeLessThanOrEqual(0.01 + 1e-9);
          expect(Number.isFinite(scaled.pieceG)).toBe(true);
        },
      ),
      RUNS,
    );
  });
});
