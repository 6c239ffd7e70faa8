import { describe, expect, test } from 'vitest';
import { loadFoods } from '../../src/book/load-foods.ts';
import { US_MAJOR_ALLERGENS } from '../../src/nutrition/allergens.ts';

const { foods } = loadFoods(['recipes']);
const holds = (id: string) =>
  foods.get(id)?.contains.map(({ allergen, species }) => (species ? `${allergen}:${species}` : allergen));
const advises = (id: string) => foods.get(id)?.advisory.map(({ allergen }) => allergen);
const usMajorsIn = (id: string) =>
  foods
    .get(id)
    ?.contains.map(({ allergen }) => allergen)
    .filter((allergen) => (US_MAJOR_ALLERGENS as readonly string[]).includes(allergen));

// Sources: FD&C Act 201(qq), 403(w); FALCPA 2004; FASTER Act 2021; FDA, Questions and Answers Regarding Food
// Allergens, edition 5 (January 2025); 21 CFR 101.91; Regulation (EU) 1169/2011 Annex II.
describe('what allergen law says of foods, in the food table', () => {
  test('coconut is no FDA tree nut since January 2025, and is still named (edition 5, Table 1)', () => {
    for (const id of ['coconut-sweetened', 'coconut-unsweetened', 'coconut-milk-canned', 'coconut-oil']) {
      expect(usMajorsIn(id)).toEqual([]);
      expect(holds(id)).toContain('coconut');
    }
  });

  test('pine nuts are a tree nut and chestnuts are not (edition 5, Table 1)', () => {
    expect(holds('pine-nuts')).toEqual(['tree_nut:pine nut']);
    expect(usMajorsIn('chestnuts')).toEqual([]);
    expect(holds('chestnuts')).toEqual(['chestnut']);
  });

  test('spreads that stand in for peanut butter: sunflower none of the nine, almond and soy each its own', () => {
    expect(usMajorsIn('sunflower-butter')).toEqual([]);
    expect(usMajorsIn('sunflower-butter-nut-free')).toEqual([]);
    expect(holds('almond-butter')).toEqual(['tree_nut:almond']);
    expect(holds('soy-nut-butter')).toEqual(['soy']);
    expect(holds('peanut-butter')).toEqual(['peanut']);
  });

  test('lupin is no US major allergen; EU law lists it, and it may trouble people allergic to peanut', () => {
    expect(usMajorsIn('lupin-flour')).toEqual([]);
    expect(holds('lupin-flour')).toEqual(['lupin']);
    expect(foods.get('lupin-flour')?.note).toMatch(/peanut/);
  });

  test('tahini, halva, hummus and everything seasoning are sesame (FASTER Act)', () => {
    for (const id of ['tahini', 'sesame-paste', 'halva', 'hummus', 'everything-seasoning', 'sesame-oil'])
      expect(holds(id), id).toContain('sesame');
  });

  test('chocolate chips with soy lecithin are soy (403(w); release-agent leniency withdrawn 2013)', () => {
    expect(holds('chips-semisweet')).toContain('soy');
    expect(holds('chocolate-chips')).toContain('soy');
  });

  test('highly refined oils declare no major allergen and say so instead (201(qq)(2))', () => {
    for (const [id, allergen] of [
      ['soybean-oil', 'soy'],
      ['peanut-oil', 'peanut'],
    ] as const) {
      expect(usMajorsIn(id)).toEqual([]);
      expect(advises(id)).toContain(allergen);
      expect(foods.get(id)?.note).toMatch(/201\(qq\)\(2\)/);
    }
  });

  test("another animal's milk is milk, by name (edition 5)", () => {
    expect(holds('goat-milk')).toEqual(['milk:goat']);
    expect(holds('feta')).toEqual(['milk']);
  });

  test('plain oats are not labelled gluten-free; the labelled package is (21 CFR 101.91)', () => {
    for (const id of ['rolled-oats', 'oat-bran', 'oat-flour', 'steel-cut-oats', 'oat-milk'])
      expect(foods.get(id)?.gluten, id).toBe('no_gluten_grain');
    expect(foods.get('oats-gluten-free')?.gluten).toBe('labelled_gluten_free');
    expect(foods.get('oats-gluten-free')?.note).toMatch(/clinician/);
  });

  test('gluten-free bread with wheat starch is still wheat (21 CFR 101.91; FALCPA)', () => {
    const bread = foods.get('wheat-starch-bread-gluten-free');
    expect(bread?.gluten).toBe('labelled_gluten_free');
    expect(holds('wheat-starch-bread-gluten-free')).toContain('wheat');
  });

  test('barley and rye hold gluten and are no US major allergen', () => {
    for (const id of ['barley-flakes', 'rye-flakes', 'barley-malt-syrup']) {
      expect(foods.get(id)?.gluten, id).toBe('contains');
      expect(usMajorsIn(id), id).toEqual([]);
    }
    expect(foods.get('crisped-rice')?.gluten).toBe('contains');
  });

  test('dried apricots with sulphur dioxide declare sulphites in the EU and no US major (Annex II, 12)', () => {
    expect(holds('apricots-dried')).toEqual(['sulphites']);
    expect(usMajorsIn('apricots-dried')).toEqual([]);
    expect(holds('apricots-dried-unsulfured')).toEqual([]);
  });

  test('oats and wheat are gluten cereals of the EU list (Annex II, 1)', () => {
    expect(holds('rolled-oats')).toContain('gluten_cereal:oats');
    expect(holds('flour')).toContain('gluten_cereal:wheat');
  });

  test('every tree nut, fish and shellfish names its kind (403(w))', () => {
    const unnamed = [...foods.values()].flatMap(({ id, contains }) =>
      contains
        .filter(({ allergen }) => ['tree_nut', 'fish', 'shellfish'].includes(allergen))
        .filter(({ species }) => species === undefined || species === 'not named')
        .map(({ allergen }) => `${id}: ${allergen}`),
    );
    expect(unnamed).toEqual([]);
  });
});
