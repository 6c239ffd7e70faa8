import { Problem } from '../nutrition/problem.ts';
import { parseQuantity } from '../nutrition/quantity/parse-quantity.ts';
import type { ExactAmount } from '../nutrition/quantity/quantity.ts';

/** A number that stands in a card as 2, "1 1/2" or ".5", exactly. @throws Problem `bad_quantity` */
export function exactAmount(written: string | number): ExactAmount {
  return parseQuantity(String(written)).exact;
}

/** As `exactAmount`, as a number. */
export function amountOf(written: string | number): number {
  return parseQuantity(String(written)).amount;
}

/** A whole number of pieces or days, one or more. @throws Problem `bad_quantity` */
export function wholeNumber(written: string | number, what: string): number {
  const quantity = parseQuantity(String(written));
  if (quantity.most || !Number.isInteger(quantity.amount) || quantity.amount < 1) {
    throw new Problem(
      'bad_quantity',
      `${what} should be one whole number, 1 or more; it is "${written}".`,
      '',
    );
  }
  return quantity.amount;
}

/** A share from 0 up to `below`: 0.12, "12 %" and "12%" are the same. @throws Problem `bad_quantity` */
export function share(written: string | number, what: string, below: number): number {
  const percent = /^(.*?)\s*(?:%|percent)\s*$/.exec(String(written));
  const value = percent ? amountOf(percent[1] ?? '') / 100 : amountOf(written);
  if (value >= below) {
    throw new Problem('bad_quantity', `${what} should be a share below ${below}; it is "${written}".`, '');
  }
  return value;
}

/** Minutes: 90, "90 min", "1 1/2 h" or "2 hours". @throws Problem `bad_quantity` */
export function minutes(written: string | number): number {
  const parts = /^(.*?)\s*(h|hr|hrs|hours?|m|min|mins|minutes?)?\.?$/.exec(
    String(written).trim().toLowerCase(),
  );
  const value = amountOf(parts?.[1] ?? String(written));
  return parts?.[2]?.startsWith('h') ? value * 60 : value;
}

/** Two numbers with a dash, "to", "x" or "by" between them. */
export function pairOf(written: string): readonly [string, string] | undefined {
  const parts = /^\s*([\d./ ]+?)\s*(?:-|–|x|×|by|to)\s*([\d./ ]+?)\s*$/i.exec(written);
  return parts?.[1] && parts[2] ? [parts[1], parts[2]] : undefined;
}

/** One text or several, as several. */
export const listOf = (written: string | readonly (string | number)[] | undefined): string[] =>
  (typeof written === 'string' ? written.split(/[,;]/) : (written ?? []))
    .map((one) => String(one).trim())
    .filter(Boolean);
