import type { Quantity } from '../quantity/quantity.ts';

/** An amount and unit as written on an ingredient line. */
export interface WrittenMeasure {
  readonly quantity: Quantity;
  /** Absent when only a number was written: "3 bananas". */
  readonly unitId?: string;
}

/** A mass the writer put beside the measure: "(15 oz)", "(30 g each)". */
export interface StatedMass {
  readonly massG: number;
  /** `each`: of one unit; `total`: of the whole line. */
  readonly of: 'each' | 'total';
}

/** One ingredient line taken apart, before any food is looked up. */
export interface WrittenLine {
  readonly written: string;
  /** One measure, or several to be added: "1/4 cup + 2 tbsp". Empty when no amount was written. */
  readonly measures: readonly WrittenMeasure[];
  readonly stated?: StatedMass;
  readonly foodWords: string;
  readonly prep?: string;
  /** What stood in parentheses: "(1%)", "(frozen)", "(15 oz)". */
  readonly aside?: readonly string[];
  /** The writer left the amount to the cook: "to taste", "as needed", "for garnish". */
  readonly leftToTheCook: boolean;
}
