import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BalancedMix, balance } from '../../../src/nutrition/balance/balance.ts';
import type { BalanceQuestion, FoodLimit, Limit } from '../../../src/nutrition/balance/question.ts';
import { rangeOf } from '../../../src/nutrition/certainty/range.ts';
import type { NutrientKey } from '../../../src/nutrition/nutrients.ts';
import { Problem } from '../../../src/nutrition/problem.ts';
import type { Recipe } from '../../../src/nutrition/recipe.ts';
import { perPiece, recipeTotals } from '../../../src/nutrition/recipe-totals.ts';
import { centsPerPiece } from '../../../src/nutrition/swap/offer.ts';
import { wetOverDry } from '../../../src/nutrition/wet-dry.ts';
import { openKitchen } from '../../../src/open-kitchen.ts';
import { foodOf, foodsOf, lineOf, recipeOf } from '../../helpers/foods.ts';

const { book } = await openKitchen({ nowMs: () => 0 });
const { foods } = book;

function recipe(id: string): Recipe {
  const found = book.recipes.get(id);
  if (!found) throw new Error(`the demo kitchen has no ${id}`);
  return found;
}

const limit = (
  key: NutrientKey,
  bound: Limit['bound'],
  amount: number,
  more: Partial<Limit> = {},
): Limit => ({
  measure: { kind: 'nutrient', key },
  bound,
  amount,
  from: 'asked',
  ...more,
});

const ask = (id: string, limits: readonly Limit[], more: Partial<BalanceQuestion> = {}) =>
  balance({ recipe: recipe(id), foods, pieces: recipe(id).yieldPieces, limits, ...more });

/** The measured mix as a recipe of its own, for the engine that answers for every recipe. */
function asRecipe(mix: BalancedMix, pieces: number): Recipe {
  const lines = mix.mix.lines.map(({ line }, at) => ({ ...line, massG: mix.grams[at] ?? 0 }));
  return { ...mix.mix.recipe, lines, yieldPieces: pieces };
}

/** What the engine says a piece of the measured mix holds, independent of how the mix was found. */
function engine(mix: BalancedMix, pieces: number, { measure, evenIfScooped, bound }: Limit): number {
  const made = asRecipe(mix, pieces);
  const whole = recipeTotals(made, foods);
  const piece = perPiece(whole, pieces);
  switch (measure.kind) {
    case 'nutrient': {
      if (!evenIfScooped) return piece.totals.of(measure.key).value ?? 0;
      const measured = made.lines.flatMap((line) => {
        const food = foods.get(line.foodId);
        return food ? [{ ...line, food }] : [];
      });
      const part = { factor: (1 - made.handlingLoss) / pieces, cut: true };
      const range = rangeOf(measured, measure.key, 'cup_and_spoon', part);
      return (bound === 'least' ? range?.low : range?.high) ?? Number.NaN;
    }
    case 'cost':
      return centsPerPiece(made, foods) ?? Number.NaN;
    case 'piece_mass':
      return piece.pieceMassG;
    case 'wet_dry': {
      const parts = made.lines.flatMap(({ foodId, role, massG }) => {
        const food = foods.get(foodId);
        return food ? [{ food, role, massG }] : [];
      });
      return wetOverDry(parts) ?? Number.NaN;
    }
    case 'energy_share': {
      const of = (key: NutrientKey) => piece.totals.of(key).value ?? Number.NaN;
      const kcal = {
        protein: 4 * of('proteinG'),
        carbohydrate: 4 * of('carbohydrateG'),
        fat: 9 * of('fatG'),
      };
      return kcal[measure.of] / (kcal.protein + kcal.carbohydrate + kcal.fat);
    }
    default:
      return measure satisfies never;
  }
}

function expectKept(mix: BalancedMix, pieces: number): void {
  for (const { limit: kept } of mix.limits) {
    const value = engine(mix, pieces, kept);
    if (kept.bound === 'least') expect(value).toBeGreaterThanOrEqual(kept.amount * (1 - 2e-6));
    else expect(value).toBeLessThanOrEqual(kept.amount * (1 + 2e-6));
  }
}

async function balanced(id: string, limits: readonly Limit[], more: Partial<BalanceQuestion> = {}) {
  const answer = await ask(id, limits, more);
  if (answer.kind !== 'balanced') throw new Error(`${id} could not be balanced`);
  return answer.mix;
}

const gramsOf = (mix: BalancedMix, foodId: string): number =>
  mix.grams[mix.mix.lines.findIndex(({ food }) => food.id === foodId)] ?? Number.NaN;

describe('balancing the oat bars', () => {
  test('keeps 20 g protein under 250 kcal as measured', async () => {
    const limits = [limit('proteinG', 'least', 20), limit('energyKcal', 'most', 250)];
    expectKept(await balanced('oat-bars', limits), 12);
  });

  test('holds a least even at the low end of cups and scoops', async () => {
    const limits = [limit('proteinG', 'least', 20, { evenIfScooped: true })];
    const mix = await balanced('oat-bars', limits);
    expectKept(mix, 12);
    expect(mix.limits[0]?.after ?? 0).toBeGreaterThan(20.5);
  });

  test('changes nothing when the recipe keeps the limits already', async () => {
    const mix = await balanced('oat-bars', [limit('proteinG', 'least', 15)]);
    expect(mix.change).toBeLessThan(0.02);
    expect(mix.measures.map((measure) => measure?.text)).toContain('3 cups');
  });

  test('leaves what must stay', async () => {
    const foodLimits: FoodLimit[] = [{ foodId: 'whey-vanilla', fixed: true }];
    const mix = await balanced('oat-bars', [limit('proteinG', 'least', 20)], { foodLimits });
    expect(gramsOf(mix, 'whey-vanilla')).toBeCloseTo(186, 6);
    expectKept(mix, 12);
  });

  test('takes whole scoops only where that is wanted', async () => {
    const foodLimits: FoodLimit[] = [{ foodId: 'whey-vanilla', wholeG: 31 }];
    const mix = await balanced('oat-bars', [limit('proteinG', 'least', 20.5)], { foodLimits });
    expect(gramsOf(mix, 'whey-vanilla') / 31).toBeCloseTo(Math.round(gramsOf(mix, 'whey-vanilla') / 31), 9);
    expectKept(mix, 12);
  });

  test('never passes a least or a most that was said of an ingredient', async () => {
    const foodLimits: FoodLimit[] = [{ foodId: 'whey-vanilla', mostG: 200 }];
    const mix = await balanced('oat-bars', [limit('proteinG', 'least', 19)], { foodLimits });
    expect(gramsOf(mix, 'whey-vanilla')).toBeLessThanOrEqual(200 + 1e-6);
    expectKept(mix, 12);
  });

  test('holds cost, mass, wet over dry and share of energy', async () => {
    const shares: Limit = {
      measure: { kind: 'energy_share', of: 'protein' },
      bound: 'least',
      amount: 0.3,
      from: 'asked',
    };
    expectKept(await balanced('oat-bars', [shares]), 12);
    const cost: Limit = { measure: { kind: 'cost' }, bound: 'most', amount: 75, from: 'asked' };
    expectKept(await balanced('oat-bars', [cost]), 12);
    const mass: Limit = { measure: { kind: 'piece_mass' }, bound: 'most', amount: 65, from: 'asked' };
    expectKept(await balanced('oat-bars', [mass]), 12);
    const wet: Limit = { measure: { kind: 'wet_dry' }, bound: 'most', amount: 0.7, from: 'asked' };
    expectKept(await balanced('oat-bars', [wet]), 12);
  });
});

describe('what cannot be', () => {
  test('names the limits that fight, and the nearest mix keeps what it says', async () => {
    const limits = [limit('proteinG', 'least', 25), limit('energyKcal', 'most', 150)];
    const answer = await ask('oat-bars', limits);
    if (answer.kind !== 'infeasible') throw new Error('25 g protein in 150 kcal was promised');
    const fought = answer.fighters.flatMap((f) => (f.kind === 'limit' ? [f.limit] : []));
    expect(fought).toEqual(limits);
    expect(answer.nearest?.limits.some(({ limit: kept }) => kept.amount !== 25 && kept.amount !== 150)).toBe(
      true,
    );
    if (answer.nearest) expectKept(answer.nearest, 12);
  });

  test('leaves out of the fight a limit that has no part in it', async () => {
    const limits = [
      limit('proteinG', 'least', 30),
      limit('proteinG', 'most', 25),
      limit('fiberG', 'least', 1),
    ];
    const answer = await ask('oat-bars', limits);
    if (answer.kind !== 'infeasible') throw new Error('contradictory limits were promised');
    expect(answer.fighters.map((f) => (f.kind === 'limit' ? f.limit.amount : f.kind))).toEqual([30, 25]);
  });

  test.each([
    ['a negative amount', [limit('proteinG', 'least', -3)]],
    ['no number', [limit('proteinG', 'least', Number.NaN)]],
    ['an endless amount', [limit('energyKcal', 'most', Number.POSITIVE_INFINITY)]],
  ])('refuses %s in words', async (_, limits) => {
    await expect(ask('oat-bars', limits)).rejects.toMatchObject({ code: 'bad_quantity' });
  });

  test('does not promise "at most" where a figure is missing, and names the food', async () => {
    const unknown = foodOf('mystery flakes', { energyKcal: 300 }, {});
    const short = recipeOf('short', [lineOf(unknown, 100)], {});
    const asked = balance({
      recipe: short,
      foods: foodsOf(unknown),
      pieces: 1,
      limits: [limit('sugarsG', 'most', 5)],
    });
    await expect(asked).rejects.toThrow(/mystery flakes/);
    await expect(asked).rejects.toBeInstanceOf(Problem);
  });

  test('balances a recipe of 60 ingredients, and a batch of none is refused', async () => {
    const many = [...foods.values()].filter((food) => food.per100g.proteinG !== undefined).slice(0, 60);
    const long = recipeOf(
      'long',
      many.map((food) => lineOf(food, 30)),
      { yieldPieces: 20 },
    );
    const before = perPiece(recipeTotals(long, foods)).totals.of('proteinG').value ?? 0;
    const answer = await balance({
      recipe: long,
      foods,
      pieces: 20,
      limits: [limit('proteinG', 'least', before * 1.1)],
    });
    if (answer.kind !== 'balanced') throw new Error('60 ingredients were too many');
    expectKept(answer.mix, 20);
    await expect(ask('oat-bars', [limit('proteinG', 'least', 20)], { pieces: 0 })).rejects.toMatchObject({
      code: 'bad_quantity',
    });
  });
});

describe('every balanced recipe of the kitchen', () => {
  test('keeps its limits when the engine recomputes it, or is said not to work', async () => {
    const ids = [...book.recipes.keys()];
    const outcomes = new Set<string>();
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...ids),
        fc.constantFrom(1, 2.5, 40 / 12),
        fc.integer({ min: 60, max: 160 }),
        fc.integer({ min: 70, max: 130 }),
        fc.boolean(),
        async (id, factor, proteinPercent, energyPercent, sure) => {
          const asked = recipe(id);
          const pieces = Math.max(1, Math.round(asked.yieldPieces * factor));
          const base = perPiece(recipeTotals(asked, foods)).totals;
          const limits = [
            limit('proteinG', 'least', ((base.of('proteinG').value ?? 0) * proteinPercent) / 100, {
              ...(sure ? { evenIfScooped: true } : {}),
            }),
            limit('energyKcal', 'most', ((base.of('energyKcal').value ?? 0) * energyPercent) / 100),
          ];
          const answer = await balance({ recipe: asked, foods, pieces, limits });
          outcomes.add(answer.kind);
          const mix = answer.kind === 'balanced' ? answer.mix : answer.nearest;
          if (mix) expectKept(mix, pieces);
          if (answer.kind === 'balanced')
            expect(
              answer.mix.limits.filter(({ limit: kept }) => kept.from === 'asked').map((l) => l.limit),
            ).toEqual(limits);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
    expect([...outcomes].sort()).toEqual(['balanced', 'infeasible']);
  });
});
