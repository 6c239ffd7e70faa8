/** How far this kitchen's figures may be from what others published. */
export interface OutsideTolerance {
  /** Mean and largest deviation over all samples, as a share of the published figure. */
  readonly mean: number;
  readonly max: number;
  /** What was aimed for and why it is no tighter. */
  readonly note: string;
}

/** One row a kind of figure, just above what is achieved. */
export const TOLERANCES = {
  'portion energy': {
    mean: 0.0005,
    max: 0.001,
    note: 'USDA figures to 2 decimals; only their rounding is open',
  },
  'portion protein': {
    mean: 0.002,
    max: 0.008,
    note: 'USDA figures to 2 decimals; small ones round coarsely',
  },
  'portion fat': { mean: 0.005, max: 0.03, note: 'as protein' },
  'portion carbohydrate': { mean: 0.002, max: 0.01, note: 'as protein' },
  'portion calcium': { mean: 0.002, max: 0.02, note: 'USDA figures to 2 decimals' },
  'portion sodium': { mean: 0.002, max: 0.02, note: 'USDA figures to 2 decimals' },
  'own factors energy': { mean: 0.002, max: 0.01, note: 'stated energy is a whole number of kcal' },
  'recipe energy': {
    mean: 0.06,
    max: 0.1,
    note: 'published per serving; aim 10 %, as careful hand work gets',
  },
  'recipe protein': {
    mean: 0.23,
    max: 0.23,
    note: 'ours 2.3 g where 3 g is printed: such pages round up or go stale (aim 15 %)',
  },
  'recipe carbohydrate': { mean: 0.06, max: 0.06, note: 'published as whole grams' },
  'recipe fat': { mean: 0.07, max: 0.07, note: 'published as whole grams: 3 g may be 2.5 to 3.5' },
} as const satisfies Record<string, OutsideTolerance>;

export type OutsideQuantity = keyof typeof TOLERANCES;

/** What whole recipes, typed as their pages print them, must come to: by list in the chat and by card alike. */
export interface PublishedTolerance {
  /** So large a share of the recipes is within `within` of what is printed. */
  readonly share: number;
  readonly within: number;
  readonly mean: number;
  readonly note: string;
}

const WHOLE_GRAMS = 'printed as whole grams: 2 g may be 1.5 to 2.5';

/**
 * Careful hand work agrees within 10 % on three in four (common practice, no source). What is farther off was looked
 * at and not tuned: pages that count oats at 100 g a cup, a can undrained, low-fat granola that is called granola,
 * plain yogurt where vanilla is written.
 */
export const PUBLISHED_TOLERANCES = {
  energy: { share: 0.75, within: 0.1, mean: 0.08, note: 'aim 10 % on three in four' },
  protein: { share: 0.6, within: 0.15, mean: 0.14, note: WHOLE_GRAMS },
  carbohydrate: { share: 0.7, within: 0.1, mean: 0.12, note: 'as protein' },
  fat: { share: 0.5, within: 0.15, mean: 0.25, note: `${WHOLE_GRAMS}; most of these recipes hold under 5 g` },
} as const satisfies Record<string, PublishedTolerance>;

export type PublishedNutrient = keyof typeof PUBLISHED_TOLERANCES;
