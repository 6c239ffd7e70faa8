import { describe, expect, test } from 'vitest';
import {
  allergensOnList,
  isListedTreeNut,
  REMOVED_FROM_US_LIST,
  US_TREE_NUTS,
} from '../../src/nutrition/allergen-list.ts';
import { allergensOf } from '../../src/nutrition/allergens-of.ts';
import { conflictsWith, judge } from '../../src/nutrition/conflict.ts';
import { foodNamed, holding } from '../nutrition/kitchen-foods.ts';

const status = (report: ReturnType<typeof allergensOf>, allergen: string) =>
  report.findings.find((f) => f.allergen === allergen)?.status;

describe('the lists', () => {
  test('the US names nine: FD&C Act 201(qq), FALCPA 2004, FASTER Act 2021', () => {
    expect([...allergensOnList('us')].sort()).toEqual(
      ['egg', 'fish', 'milk', 'peanut', 'sesame', 'shellfish', 'soy', 'tree_nut', 'wheat'].sort(),
    );
  });

  test('the EU names fourteen: Regulation (EU) 1169/2011 Annex II', () => {
    expect(allergensOnList('eu')).toHaveLength(14);
    expect(allergensOnList('eu')).toContain('gluten_cereal');
    expect(allergensOnList('eu')).not.toContain('wheat');
  });

  test('twelve tree nuts since 6 January 2025: FDA Q&A Regarding Food Allergens, Edition 5, Table 1', () => {
    expect(US_TREE_NUTS).toHaveLength(12);
    const twelve =
      'almond,black walnut,brazil nut,california walnut,cashew,filbert,heartnut,macadamia,pecan,pine nut,pistachio,walnut';
    for (const nut of twelve.split(',')) expect([nut, isListedTreeNut(nut, 'us')]).toEqual([nut, true]);
  });

  test('what FDA took off the list no longer counts as a tree nut: same edition', () => {
    for (const nut of REMOVED_FROM_US_LIST) expect([nut, isListedTreeNut(nut, 'us')]).toEqual([nut, false]);
    expect(REMOVED_FROM_US_LIST).toHaveLength(12);
  });

  test('pine nut is on the US list and not on the EU list: Annex II no. 8', () => {
    expect([isListedTreeNut('pine nuts', 'us'), isListedTreeNut('pine nuts', 'eu')]).toEqual([true, false]);
  });

  test('a nut nobody names counts as a tree nut', () => {
    expect(isListedTreeNut(undefined, 'us')).toBe(true);
    expect(isListedTreeNut('moon nut', 'us')).toBe(true);
  });
});

describe('worked cases', () => {
  test('coconut is not an FDA tree nut, is still shown, and is asked about: 21 CFR 101.4, Edition 5', () => {
    const report = allergensOf([holding('Coconut, shredded', { allergen: 'coconut' })], 'us');
    expect(status(report, 'tree_nut')).toBe('not_listed');
    expect(report.unlisted).toMatchObject([
      { concern: 'coconut', through: [{ foodName: 'Coconut, shredded' }] },
    ]);
    expect(conflictsWith(holding('Coconut', { allergen: 'coconut' }), 'tree_nut')).toBe('ask');
  });

  test('pine nuts conflict, chestnut is asked about: Edition 5, Table 1', () => {
    expect(
      conflictsWith(holding('Pine nuts', { allergen: 'tree_nut', species: 'pine nut' }), 'tree_nut'),
    ).toBe('conflict');
    expect(conflictsWith(holding('Chestnuts', { allergen: 'chestnut' }), 'tree_nut')).toBe('ask');
    expect(
      conflictsWith(holding('Chestnuts', { allergen: 'tree_nut', species: 'chestnuts' }), 'tree_nut'),
    ).toBe('ask');
  });

  test('a peanut swap is checked for what it holds itself: FALCPA; lupin by FDA consumer information', () => {
    const sunflower = foodNamed('Sunflower seed butter', { group: 'Nuts and seeds', allergenBasis: 'kind' });
    expect(conflictsWith(sunflower, 'peanut')).toBe('clear_by_label');
    expect(allergensOf([sunflower], 'us').labelsToRead).toHaveLength(1);
    const almond = holding('Almond butter', { allergen: 'tree_nut', species: 'almond' });
    expect([conflictsWith(almond, 'peanut'), conflictsWith(almond, 'tree_nut')]).toEqual([
      'clear_by_label',
      'conflict',
    ]);
    expect(conflictsWith(holding('Soy butter', { allergen: 'soy' }), 'soy')).toBe('conflict');
    expect(conflictsWith(holding('Lupin flour', { allergen: 'lupin' }), 'peanut')).toBe('ask');
  });

  test('tahini is sesame: FASTER Act 2021', () => {
    expect(conflictsWith(holding('Tahini', { allergen: 'sesame' }), 'sesame')).toBe('conflict');
  });

  test('soy lecithin counts as soy in any role: FD&C Act 403(w), FDA notice of 25 February 2013', () => {
    const chips = foodNamed('Chocolate chips', {
      product: {
        servingG: 15,
        servingName: '1 tbsp',
        perServing: {},
        ingredientsStatement: 'Sugar, cocoa mass, cocoa butter, soy lecithin.',
        lots: [],
        approvedByDietitian: true,
      },
    });
    expect(conflictsWith(chips, 'soy')).toBe('conflict');
    expect(status(allergensOf([chips], 'us'), 'soy')).toBe('contains');
  });

  test('highly refined soybean oil is no major allergen, yet it is shown: FD&C Act 201(qq)(2)', () => {
    const oil = foodNamed('Soybean oil, refined', { group: 'Fats and oils' });
    const report = allergensOf([oil], 'us');
    expect(status(report, 'soy')).toBe('not_listed');
    expect(report.refinedOils).toMatchObject([{ foodName: 'Soybean oil, refined', source: 'soy' }]);
    expect(judge(oil, 'soy')).toMatchObject({ verdict: 'ask', because: 'highly_refined_oil' });
  });

  test('goat cheese is milk: FDA Q&A, Edition 5', () => {
    expect(conflictsWith(holding('Goat cheese', { allergen: 'milk', species: 'goat' }), 'milk')).toBe(
      'conflict',
    );
  });

  test('plain oats are not for coeliac disease, labelled oats come with the avenin note: 21 CFR 101.91', () => {
    const plain = foodNamed('Rolled oats', { group: 'Grains', allergenBasis: 'kind' });
    const labelled = foodNamed('Rolled oats, labelled gluten-free', { gluten: 'labelled_gluten_free' });
    expect(judge(plain, 'gluten')).toEqual({ verdict: 'conflict', because: 'oats_not_labelled' });
    expect(allergensOf([plain], 'us').gluten.status).toBe('oats_not_labelled');
    expect(conflictsWith(labelled, 'gluten')).toBe('clear_by_label');
    expect(allergensOf([labelled], 'us')).toMatchObject({
      gluten: { status: 'only_labelled_grains' },
      labelledOats: [{ foodName: 'Rolled oats, labelled gluten-free' }],
    });
  });

  test('gluten-free by processed wheat starch still conflicts with a wheat allergy: 21 CFR 101.91, 201(qq)', () => {
    const starch = foodNamed('Wheat-starch cracker, labelled gluten-free', {
      gluten: 'labelled_gluten_free',
      contains: [{ allergen: 'wheat' }],
    });
    expect([conflictsWith(starch, 'wheat'), conflictsWith(starch, 'gluten')]).toEqual([
      'conflict',
      'clear_by_label',
    ]);
  });

  test('sulphites are declared in the EU and are no US major allergen: Annex II no. 12', () => {
    const apricots = holding('Dried apricots, 500 mg/kg sulphur dioxide', { allergen: 'sulphites' });
    expect(status(allergensOf([apricots], 'eu'), 'sulphites')).toBe('contains');
    expect(allergensOf([apricots], 'us').findings.every((f) => f.status === 'not_listed')).toBe(true);
    expect(allergensOf([apricots], 'us').unlisted).toMatchObject([{ concern: 'sulphites' }]);
  });

  test('oats are a gluten cereal in the EU whatever their label says: Annex II no. 1', () => {
    const labelled = foodNamed('Oats, labelled gluten-free', { gluten: 'labelled_gluten_free' });
    expect(status(allergensOf([labelled], 'eu'), 'gluten_cereal')).toBe('contains');
    expect(status(allergensOf([labelled], 'us'), 'wheat')).toBe('not_listed');
  });

  test('wheat-free is not gluten-free: barley, 21 CFR 101.91(a)', () => {
    const malt = foodNamed('Barley malt', { gluten: 'contains' });
    expect([conflictsWith(malt, 'wheat'), conflictsWith(malt, 'gluten')]).toEqual([
      'clear_by_label',
      'conflict',
    ]);
  });
});
