/** Where a factor comes from; `exact` ones are defined, not measured. */
export type UnitSource =
  | 'NIST HB 44 App. C, exact'
  | 'SI, exact'
  | '21 CFR 101.9(b)(5)(viii), label arithmetic only'
  | 'ICN Basics at a Glance, note 1: 32/N fl oz, exact'
  | 'national metric practice, from memory'
  | 'common practice, no source';

interface UnitRow {
  readonly id: string;
  readonly kind: 'volume' | 'mass';
  /** mL of one volume unit, g of one mass unit. */
  readonly size: number;
  readonly one: string;
  readonly many: string;
  /** Lower-case spellings; the ones where case matters are in `CASED_SPELLINGS`. */
  readonly spellings: readonly string[];
  readonly source: UnitSource;
}

/** mL of one US teaspoon; every US household measure is a whole multiple or part of it. NIST HB 44 App. C. */
export const TEASPOON_ML = 4.928_921_593_75;

/**
 * Units with a fixed size. US customary measures (cup 236.588 mL) and the label's own set (cup 240 mL) are
 * different units on purpose and never stand in for one another.
 */
export const FIXED_UNITS = [
  {
    id: 'ml',
    kind: 'volume',
    size: 1,
    one: 'mL',
    many: 'mL',
    spellings: ['ml', 'mls', 'milliliter', 'milliliters', 'millilitre', 'millilitres', 'cc'],
    source: 'SI, exact',
  },
  {
    id: 'dl',
    kind: 'volume',
    size: 100,
    one: 'dL',
    many: 'dL',
    spellings: ['dl', 'deciliter', 'deciliters'],
    source: 'SI, exact',
  },
  {
    id: 'l',
    kind: 'volume',
    size: 1000,
    one: 'L',
    many: 'L',
    spellings: ['l', 'liter', 'liters', 'litre', 'litres', 'ltr'],
    source: 'SI, exact',
  },
  {
    id: 'pinch',
    kind: 'volume',
    size: TEASPOON_ML / 16,
    one: 'pinch',
    many: 'pinches',
    spellings: ['pinch', 'pinches'],
    source: 'common practice, no source',
  },
  {
    id: 'drop',
    kind: 'volume',
    size: TEASPOON_ML / 64,
    one: 'drop',
    many: 'drops',
    spellings: ['drop', 'drops'],
    source: 'common practice, no source',
  },
  {
    id: 'dash',
    kind: 'volume',
    size: TEASPOON_ML / 8,
    one: 'dash',
    many: 'dashes',
    spellings: ['dash', 'dashes'],
    source: 'common practice, no source',
  },
  {
    id: 'tsp',
    kind: 'volume',
    size: TEASPOON_ML,
    one: 'tsp',
    many: 'tsp',
    spellings: ['tsp', 'tsps', 'teaspoon', 'teaspoons', 'teasp', 'teaspon', 'tea spoon', 'tea spoons', 'ts'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'tbsp',
    kind: 'volume',
    size: TEASPOON_ML * 3,
    one: 'Tbsp',
    many: 'Tbsp',
    spellings: [
      'tbsp',
      'tbsps',
      'tbs',
      'tbl',
      'tblsp',
      'tblspn',
      'tbls',
      'tablespoon',
      'tablespoons',
      'tablespon',
      'tabelspoon',
      'table spoon',
      'table spoons',
      'tb',
    ],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'floz',
    kind: 'volume',
    size: TEASPOON_ML * 6,
    one: 'fl oz',
    many: 'fl oz',
    spellings: [
      'floz',
      'fl oz',
      'fl. oz',
      'fluid oz',
      'fluid ounce',
      'fluid ounces',
      'fl ounce',
      'fl ounces',
    ],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'cup',
    kind: 'volume',
    size: TEASPOON_ML * 48,
    one: 'cup',
    many: 'cups',
    spellings: ['cup', 'cups', 'c', 'cp', 'cps', 'cu', 'cupful', 'cupfuls', 'us cup', 'us cups'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'pint',
    kind: 'volume',
    size: TEASPOON_ML * 96,
    one: 'pint',
    many: 'pints',
    spellings: ['pint', 'pints', 'pt', 'pts'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'quart',
    kind: 'volume',
    size: TEASPOON_ML * 192,
    one: 'quart',
    many: 'quarts',
    spellings: ['quart', 'quarts', 'qt', 'qts'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'gallon',
    kind: 'volume',
    size: TEASPOON_ML * 768,
    one: 'gallon',
    many: 'gallons',
    spellings: ['gallon', 'gallons', 'gal', 'gals'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'metric_cup',
    kind: 'volume',
    size: 250,
    one: 'metric cup',
    many: 'metric cups',
    spellings: ['metric cup', 'metric cups'],
    source: 'national metric practice, from memory',
  },
  {
    id: 'label_cup',
    kind: 'volume',
    size: 240,
    one: 'label cup',
    many: 'label cups',
    spellings: ['label cup', 'label cups'],
    source: '21 CFR 101.9(b)(5)(viii), label arithmetic only',
  },
  {
    id: 'label_tbsp',
    kind: 'volume',
    size: 15,
    one: 'label Tbsp',
    many: 'label Tbsp',
    spellings: ['label tbsp', 'label tablespoon', 'label tablespoons'],
    source: '21 CFR 101.9(b)(5)(viii), label arithmetic only',
  },
  {
    id: 'label_tsp',
    kind: 'volume',
    size: 5,
    one: 'label tsp',
    many: 'label tsp',
    spellings: ['label tsp', 'label teaspoon', 'label teaspoons'],
    source: '21 CFR 101.9(b)(5)(viii), label arithmetic only',
  },
  {
    id: 'label_floz',
    kind: 'volume',
    size: 30,
    one: 'label fl oz',
    many: 'label fl oz',
    spellings: ['label fl oz', 'label floz'],
    source: '21 CFR 101.9(b)(5)(viii), label arithmetic only',
  },
  {
    id: 'mg',
    kind: 'mass',
    size: 0.001,
    one: 'mg',
    many: 'mg',
    spellings: ['mg', 'mgs', 'milligram', 'milligrams'],
    source: 'SI, exact',
  },
  {
    id: 'g',
    kind: 'mass',
    size: 1,
    one: 'g',
    many: 'g',
    spellings: [
      'g',
      'gs',
      'gr',
      'gm',
      'gms',
      'gram',
      'grams',
      'gramme',
      'grammes',
      'gramm',
      'gramms',
      'grms',
    ],
    source: 'SI, exact',
  },
  {
    id: 'kg',
    kind: 'mass',
    size: 1000,
    one: 'kg',
    many: 'kg',
    spellings: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'],
    source: 'SI, exact',
  },
  {
    id: 'oz',
    kind: 'mass',
    size: 28.349_523_125,
    one: 'oz',
    many: 'oz',
    spellings: ['oz', 'ozs', 'ounce', 'ounces', 'oz wt'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'lb',
    kind: 'mass',
    size: 453.592_37,
    one: 'lb',
    many: 'lb',
    spellings: ['lb', 'lbs', '#', 'pound', 'pounds'],
    source: 'NIST HB 44 App. C, exact',
  },
  {
    id: 'label_oz',
    kind: 'mass',
    size: 28,
    one: 'label oz',
    many: 'label oz',
    spellings: ['label oz', 'label ounce', 'label ounces'],
    source: '21 CFR 101.9(b)(5)(viii), label arithmetic only',
  },
] as const satisfies readonly UnitRow[];

export type FixedUnitId = (typeof FIXED_UNITS)[number]['id'];

/** Single letters whose case carries the meaning: T is a tablespoon, t a teaspoon. */
export const CASED_SPELLINGS: ReadonlyMap<string, FixedUnitId> = new Map([
  ['T', 'tbsp'],
  ['Ts', 'tbsp'],
  ['t', 'tsp'],
]);
