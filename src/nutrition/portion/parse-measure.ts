import { Problem } from '../problem.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readUnit, type Unit } from '../units/unit.ts';

/** An amount with its unit, as written: "1 1/2 cups", "200g", "2 T". */
export interface Measure {
  readonly quantity: Quantity;
  /** Absent when only a count was written. */
  readonly unit?: Unit;
  /** The word that stood for the unit, when it is none we know: a food's own word. */
  readonly word?: string;
}

const LONGEST_MEASURE = 90;
const DISHER = /\s+(no\.?\s*\d+\s+(?:scoops?|dishers?)|#\d+\s+(?:scoops?|dishers?))$/i;
const TRAILING = /^(.*?[\d\s./½⅓⅔¼¾⅕-⅞])?\s*(#|[a-z][a-z.\s_-]*)$/i;

/**
 * Reads "1 1/2 cups", "½ c", "200g", "2#", "a dozen", "3 large", "2 No. 16 scoops".
 * @throws Problem `bad_quantity` that says what to write instead.
 * @example parseMeasure('2 T').unit?.id // 'tbsp'
 */
export function parseMeasure(text: string): Measure {
  if (text.length > LONGEST_MEASURE) {
    throw new Problem(
      'bad_quantity',
      'That amount is too long to read.',
      'Write it like 1 1/2 cups or 200 g.',
    );
  }
  const trimmed = text.trim();
  const disher = DISHER.exec(trimmed);
  if (disher?.[1]) {
    return withUnit(trimmed.slice(0, disher.index), disher[1].replace(/s$/i, ''));
  }
  const parts = TRAILING.exec(trimmed);
  const words = parts?.[2]?.trim();
  if (!words) return { quantity: parseQuantity(trimmed) };
  return splitWords(parts?.[1] ?? '', words);
}

/** The longest tail of the words that is a unit, so that "a dozen large" and "two and a half cups" both read. */
function splitWords(before: string, words: string): Measure {
  const tokens = words.split(/\s+/);
  for (let start = 0; start < tokens.length; start++) {
    const unit = readUnit(tokens.slice(start).join(' '));
    const amount = [before, ...tokens.slice(0, start)].join(' ');
    if (unit) return { quantity: parseQuantity(amount.trim() === '' ? '1' : amount), unit };
  }
  const amount = tryQuantity([before, words].join(' '));
  if (amount) return { quantity: amount };
  return { quantity: parseQuantity(before.trim() === '' ? '1' : before), word: words };
}

function withUnit(amount: string, unitText: string): Measure {
  const unit = readUnit(unitText.replace(/^no(?=\d)/i, 'no '));
  return { quantity: parseQuantity(amount), ...(unit ? { unit } : { word: unitText }) };
}

/** Number words make a quantity of their own ("a dozen"); anything else is a food's word. */
function tryQuantity(text: string): Quantity | undefined {
  try {
    return parseQuantity(text);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}
