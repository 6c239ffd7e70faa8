import type { MeasuredBy } from '../recipe.ts';

/** How far a measure may be off, as a relative half width: 0.05 is 5 % either way. */
export interface Tolerance {
  readonly share: number;
  readonly source: string;
}

/**
 * How well a line is measured in ordinary bench work, when the recipe does not say.
 * `weighed`: a scale that reads 1 g, on 100 g. `counted`: half a step between US egg weight classes (3 oz a dozen
 * on 24 oz, 7 CFR 56.218, known from memory). `label`: a whole package against its declared net weight.
 */
export const MEASURE_TOLERANCES: { readonly [way in MeasuredBy]: Tolerance } = {
  weighed: { share: 0.01, source: 'common practice, no source' },
  levelled: { share: 0.05, source: 'common practice, no source' },
  scooped: { share: 0.1, source: 'common practice, no source' },
  counted: { share: 0.06, source: 'US egg weight classes, 7 CFR 56.218, known from memory' },
  label: { share: 0.03, source: 'common practice, no source' },
};

/** How far the grams of a household portion are from what this kitchen's cup of this food weighs. */
export const PORTION_TOLERANCE: Tolerance = { share: 0.04, source: 'common practice, no source' };

/** How even the pieces are: cut on a grid by eye and counted, or each put on the scale. */
export const CUT_TOLERANCES = {
  by_eye: { share: 0.04, source: 'common practice, no source' },
  weighed: { share: 0.01, source: 'common practice, no source' },
} as const satisfies Record<string, Tolerance>;
