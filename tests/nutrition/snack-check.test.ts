import { describe, expect, test } from 'vitest';
import { changedMix } from '../../src/nutrition/changes.ts';
import { completeness } from '../../src/nutrition/completeness.ts';
import type { ProductLabel } from '../../src/nutrition/food.ts';
import { snackCheck } from '../../src/nutrition/snack-check.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { foodOf, milk2, oats, peanutButter, wheyPowder } from '../helpers/foods.ts';

const banana = foodOf(
  'banana',
  { carbohydrateG: 22.84, proteinG: 1.09, fatG: 0.33, saturatedFatG: 0.11 },
  { roles: ['color', 'sweetener'], portions: [{ unit: 'medium', massG: 118 }] },
);
const cheese = foodOf(
  'string_cheese',
  { proteinG: 24, fatG: 22, saturatedFatG: 13, carbohydrateG: 3 },
  {
    roles: ['protein'],
    portions: [{ unit: 'stick', massG: 28 }],
    contains: [{ allergen: 'milk' }],
    product: { approvedByDietitian: true } as ProductLabel,
  },
);
const unapproved = foodOf(
  'mystery_powder',
  { proteinG: 80 },
  {
    roles: ['protein'],
    portions: [{ unit: 'packet', massG: 30 }],
    product: { approvedByDietitian: false } as ProductLabel,
  },
);
const table = [oats, milk2, unapproved, cheese, banana, peanutButter, wheyPowder];

describe('a snack', () => {
  test('is a carbohydrate source, a protein source and color', () => {
    const check = snackCheck(
      [
        { food: banana, massG: 118 },
        { food: cheese, massG: 42 },
      ],
      table,
    );
    expect(check).toEqual({ there: ['carbohydrate', 'protein', 'color'], missing: [], additions: [] });
  });

  test('that lacks protein is offered one the dietitian approved, never an unapproved powder', () => {
    const check = snackCheck([{ food: banana, massG: 118 }], [...table, { ...cheese, id: 'z_cheese' }]);
    expect(check.missing).toEqual(['protein']);
    expect(check.additions.map((addition) => addition.food.id)).toEqual([]);
    const bigger = { ...cheese, portions: [{ unit: 'stick', massG: 30 }] };
    expect(snackCheck([{ food: banana, massG: 118 }], [...table, bigger]).additions[0]?.food).toBe(bigger);
  });

  test('that lacks color is offered a fruit', () => {
    const check = snackCheck(
      [
        { food: oats, massG: 60 },
        { food: wheyPowder, massG: 30 },
      ],
      table,
    );
    expect(check.missing).toEqual(['color']);
    expect(check.additions).toEqual([{ part: 'color', food: banana, portion: banana.portions[0], count: 1 }]);
  });

  test('is never offered a dish of beans beside a fruit, and one fruit stands for two missing parts', async () => {
    const { foods } = (await openKitchen({ nowMs: () => 0 })).book;
    const check = (id: string, massG: number) => {
      const food = foods.get(id);
      return food ? snackCheck([{ food, massG }], foods.values()) : undefined;
    };
    const [protein] = check('banana', 118)?.additions ?? [];
    expect(protein?.food.name).toBe('Pumpkin seeds, roasted, unsalted');
    expect(protein?.count).toBe(0.25);
    const beside = check('cheddar', 28);
    expect(beside?.missing).toContain('color');
    expect(beside?.additions.map(({ part }) => part)).toEqual(['carbohydrate', 'protein']);
    expect(beside?.additions[0]?.food.name).toBe('Banana');
  });

  test('counts a mostly unsaturated fat as color, and never one whose fats are not known', () => {
    const nutty = { ...peanutButter, per100g: { ...peanutButter.per100g, saturatedFatG: 10.3 } };
    expect(snackCheck([{ food: nutty, massG: 32 }], table).there).toContain('color');
    expect(snackCheck([{ food: peanutButter, massG: 32 }], table).there).not.toContain('color');
  });
});

describe('something added or left out', () => {
  const mix = [
    { food: oats, massG: 100 },
    { food: peanutButter, massG: 50 },
  ];
  test('changes those lines only, and says what was not there to leave out', () => {
    const changed = changedMix(mix, { add: [{ food: banana, massG: 118 }], remove: [peanutButter, milk2] });
    expect(changed.amounts.map((amount) => amount.food.id)).toEqual(['rolled_oats', 'banana']);
    expect(changed.removed).toEqual([mix[1]]);
    expect(changed.notThere).toEqual([milk2]);
    expect(mix).toHaveLength(2);
  });
});

describe('completeness', () => {
  test('is the share of mass whose foods have a figure', () => {
    const mix = [
      { food: oats, massG: 70 },
      { food: wheyPowder, massG: 30 },
    ];
    expect(completeness(mix, 'leucineG')).toEqual({ massShare: 0.7, linesKnown: 1, lines: 2 });
    expect(completeness([], 'leucineG')).toBeUndefined();
  });
});
