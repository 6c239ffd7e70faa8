import type { Need } from '../../nutrition/allergens.ts';

/**
 * What a span of the message is. The letters stand in the `shape` of a message, where the rules of the intents
 * look for them; a word that is none of these stands there as itself, in lower case.
 */
export type Sym =
  | 'N' // number
  | 'U' // unit of measure
  | 'Q' // number with its unit
  | 'P' // piece: bar, bite, person
  | 'R' // recipe
  | 'F' // food
  | 'L' // location
  | 'A' // need: "nut free"
  | 'V' // allergen that is no food: "nuts", "gluten"
  | 'M' // nutrient
  | 'W' // day or time
  | 'Z' // duration
  | 'T' // temperature
  | 'C' // money
  | 'G' // per cent
  | 'B' // factor: "double", "x2"
  | 'X' // pan
  | 'D' // lot
  | 'J' // code of a reminder: R12
  | 'H' // web address
  | 'K' // athlete code
  | 'S' // sport
  | 'Y'; // supplement

/** Day and time as said; `when` is put together from these. */
export interface Moment {
  readonly day?: string;
  /** The same date looking back, where nobody wrote the year and `day` lies far ahead. */
  readonly past?: string;
  readonly time?: string;
  readonly offset?: string;
  readonly every?: boolean;
  /** "at 6": nobody said morning or evening. */
  readonly unsure?: boolean;
}

export interface Atom {
  /** A `Sym`, or the word itself. */
  readonly sym: string;
  /** Words as typed, lower case. */
  readonly text: string;
  /** Words with spelling put right. */
  readonly word: string;
  readonly value?: number | undefined;
  readonly most?: number | undefined;
  /** Unit id, piece word, temperature scale. */
  readonly unit?: string | undefined;
  /** The kitchen's own id, nutrient name, location id. */
  readonly id?: string | undefined;
  readonly needs?: readonly Need[] | undefined;
  readonly moment?: Moment | undefined;
  /** A word no vocabulary knows: perhaps a name. */
  readonly unknown?: boolean | undefined;
}

/** What a phrase of the vocabulary becomes. */
export interface Meaning {
  readonly sym: Sym;
  readonly id?: string | undefined;
  readonly value?: number | undefined;
  readonly unit?: string | undefined;
  readonly needs?: readonly Need[] | undefined;
  readonly moment?: Moment | undefined;
}
