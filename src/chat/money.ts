import type { Food } from '../nutrition/food.ts';
import { Problem } from '../nutrition/problem.ts';
import { listed } from './need-words.ts';
import { slotNumber } from './slot-number.ts';
import type { Slots } from './slots.ts';

/** Whole cents as money: "$12.99", "-$3.00". */
export const dollars = (cents: number): string =>
  `${cents < 0 ? '-' : ''}$${(Math.abs(Math.round(cents)) / 100).toFixed(2)}`;

/** "at least $4.10" when something in it has no price. */
export const atLeast = (cents: number, unpriced: readonly unknown[]): string =>
  unpriced.length > 0 ? `at least ${dollars(cents)}` : dollars(cents);

/** What is missing from a sum, and how to tell it. */
export function unpricedLine(names: readonly string[]): string | undefined {
  const [first] = names;
  if (first === undefined) return undefined;
  return `No price on file for ${listed(names)}. Staff can say it, like "${first.toLowerCase()} 3.49 for 16 oz".`;
}

export const namesOf = (foods: readonly Food[]): string[] => foods.map(({ name }) => name);

/** The money in a slot as whole cents. Throws `bad_quantity` for what is no price. */
export function slotCents(slots: Slots, name: string): number | undefined {
  const said = slotNumber(slots, name);
  if (said === undefined) return undefined;
  if (said >= 0 && said <= 1e9) return Math.round(said * 100);
  throw new Problem(
    'bad_quantity',
    said > 1e9 ? 'That is more than any package costs.' : 'A price is not below 0.',
    'Write dollars and cents, like "oats 3.49 for 42 oz".',
  );
}

/** "a 50 lb bag"; "42 oz" where only an amount was told. */
export const aPackage = (packageName: string): string =>
  /^[\d.]+ \S+$/.test(packageName) ? packageName : `a ${packageName}`;
