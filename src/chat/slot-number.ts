import { Problem } from '../nutrition/problem.ts';
import { parseQuantity } from '../nutrition/quantity/parse-quantity.ts';
import type { Slots } from './slots.ts';

/**
 * The number in a slot. What reading left as words ("1/0", "NaN", "1e9") gets the Problem that says what to write.
 * @returns undefined when the slot was not said.
 */
export function slotNumber(slots: Slots, name: string): number | undefined {
  const value = slots[name];
  if (value === undefined) return undefined;
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  if (typeof value === 'string') return parseQuantity(value).amount;
  throw new Problem(
    'bad_quantity',
    `"${String(value)}" is not an amount.`,
    'Write a number such as 12 or 1 1/2.',
  );
}

/** The words in a slot; undefined when it was not said or holds no text. */
export function slotText(slots: Slots, name: string): string | undefined {
  const value = slots[name];
  return typeof value === 'string' && value !== '' ? value : undefined;
}
