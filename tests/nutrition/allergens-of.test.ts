import { describe, expect, test } from 'vitest';
import { NEEDS, type Need } from '../../src/nutrition/allergens.ts';
import { allergensOf } from '../../src/nutrition/allergens-of.ts';
import { conflictsWith, judge } from '../../src/nutrition/conflict.ts';
import { foodNamed, holding } from './kitchen-foods.ts';

const milk = foodNamed('Milk, 2 %', {
  contains: [{ allergen: 'milk' }],
  lactose: 'contains',
  vegan: false,
  allergenBasis: 'kind',
  group: 'Dairy',
});

describe('an allergen report', () => {
  test('names the ingredient and the species', () => {
    const report = allergensOf([holding('Trail nuts', { allergen: 'tree_nut', species: 'cashew' })], 'us');
    const nuts = report.findings.find((f) => f.allergen === 'tree_nut');
    expect(nuts).toMatchObject({
      status: 'contains',
      contains: [{ foodName: 'Trail nuts', species: 'cashew' }],
    });
  });

  test('puts an advisory statement below contains and above not known', () => {
    const chips = foodNamed('Chips', { advisory: [{ allergen: 'peanut' }] });
    const unread = foodNamed('Granola', { allergenBasis: 'kind', group: 'Cereals' });
    const statusOf = (...foods: Parameters<typeof allergensOf>[0]) =>
      allergensOf(foods, 'us').findings.find((f) => f.allergen === 'peanut')?.status;
    expect(statusOf(chips, unread, holding('Peanuts', { allergen: 'peanut' }))).toBe('contains');
    expect(statusOf(chips, unread)).toBe('advisory');
    expect(statusOf(unread)).toBe('not_known');
    expect(statusOf(milk)).toBe('not_listed');
  });

  test('never says that the kitchen was checked', () => {
    expect(allergensOf([milk], 'us').crossContact).toBe('not_checked');
  });

  test('says vegan only when every label or kind allows it', () => {
    const unread = foodNamed('Dark chocolate', { allergenBasis: 'kind', group: 'Sweets' });
    expect(allergensOf([milk], 'us').vegan).toMatchObject({
      status: 'no',
      through: [{ foodName: 'Milk, 2 %' }],
    });
    expect(allergensOf([unread], 'us').vegan.status).toBe('not_known');
    expect(allergensOf([foodNamed('Carrot')], 'us').vegan.status).toBe('yes');
  });

  test('names a cereal with gluten once: on the EU list, or on the gluten line of a US answer', () => {
    const oats = { ...holding('Oat drink', { allergen: 'gluten_cereal', species: 'oats' }), group: 'Drinks' };
    expect(allergensOf([oats], 'us').unlisted).toEqual([]);
    expect(allergensOf([oats], 'us').gluten.status).toBe('oats_not_labelled');
    expect(allergensOf([oats], 'eu').findings.find((f) => f.allergen === 'gluten_cereal')?.status).toBe(
      'contains',
    );
  });

  test('counts a food once however often a recipe names it', () => {
    const report = allergensOf([milk, milk], 'us');
    expect(report.findings.find((f) => f.allergen === 'milk')?.contains).toHaveLength(1);
  });
});

describe('a food against a need', () => {
  test('lactose-free milk is no answer to a milk allergy', () => {
    const lactoseFree = { ...milk, lactose: 'none' as const, allergenBasis: 'label' as const };
    expect([conflictsWith(lactoseFree, 'milk'), conflictsWith(lactoseFree, 'lactose')]).toEqual([
      'conflict',
      'clear_by_label',
    ]);
    expect(judge({ ...lactoseFree, lactose: 'low' }, 'lactose')).toEqual({
      verdict: 'ask',
      because: 'low_lactose',
    });
  });

  test('a made food known by kind only is never clear of an allergen it does not declare', () => {
    const granola = foodNamed('Granola, homemade', { allergenBasis: 'kind', group: 'Breakfast cereals' });
    const allergens = NEEDS.filter((need) => need !== 'added_sugar' && need !== 'pork');
    for (const need of allergens)
      expect([need, conflictsWith(granola, need)]).not.toEqual([need, 'clear_by_label']);
  });

  test('nuts are asked about for each other, because they share lines', () => {
    const almonds = {
      ...holding('Almonds', { allergen: 'tree_nut', species: 'almond' }),
      group: 'Nuts',
      allergenBasis: 'kind' as const,
    };
    expect(conflictsWith(almonds, 'peanut')).toBe('ask');
  });

  test.each<[string, Need, string]>([
    ['Honey', 'added_sugar', 'conflict'],
    ['Dates', 'added_sugar', 'clear_by_label'],
    ['Almond milk, unsweetened', 'added_sugar', 'clear_by_label'],
  ])('%s and %s: %s', (name, need, verdict) => {
    const group = name === 'Dates' ? 'Fruits' : 'Sweets';
    expect(
      conflictsWith(
        foodNamed(name, {
          group,
          per100g: { sugarsG: name.startsWith('Almond') ? 0 : 60 },
          roles: name.startsWith('Almond') ? ['liquid'] : ['sweetener'],
        }),
        need,
      ),
    ).toBe(verdict);
  });

  test('gelatin of unnamed origin is asked about for pork', () => {
    expect(judge(foodNamed('Marshmallows', { vegan: false, vegetarian: false }), 'pork')).toEqual({
      verdict: 'ask',
      because: 'gelatin_source',
    });
  });
});
