/** An exact ratio, small enough to be held in two safe integers. */
export interface ExactAmount {
  readonly numerator: number;
  readonly denominator: number;
}

/** An amount as somebody wrote it, exactly; never negative, never NaN. */
export interface Quantity {
  readonly exact: ExactAmount;
  /** The same amount as a number, for arithmetic; the lower end of a range. */
  readonly amount: number;
  /** The upper end, when a range such as "2-3" was written. */
  readonly most?: { readonly exact: ExactAmount; readonly amount: number };
  /** "a couple", "about 3": the writer was not exact. */
  readonly approximate: boolean;
}

/** Largest amount anybody may write: beyond a hundred thousand pieces or a tonne in grams there is a typing error. */
export const MOST_AMOUNT = 1_000_000;
