import { Problem } from '../../../nutrition/problem.ts';
import type { Slots, SlotValue, Target } from '../../slots.ts';

/** A slot's words; absent when it was not said or is no text. */
export function slotText(slots: Slots, name: string): string | undefined {
  const value = slots[name];
  return typeof value === 'string' && value.trim() !== '' ? value.trim() : undefined;
}

/** A slot's number; absent when it was not said or is no number. Throws `bad_quantity` for one beyond all measure. */
export function slotNumber(slots: Slots, name: string): number | undefined {
  const value = slots[name];
  if (typeof value !== 'number') return undefined;
  if (Number.isFinite(value) && Math.abs(value) <= MOST) return value;
  throw new Problem(
    'bad_quantity',
    'That is more than a kitchen measures.',
    'Write an amount such as 2 cups or 150 g.',
  );
}

/** Of anything: grams, cups or pieces. */
const MOST = 1e7;

/** A slot that may hold one value or several, as a list. */
export function slotList(slots: Slots, name: string): readonly SlotValue[] {
  const value = slots[name];
  if (value === undefined) return [];
  return Array.isArray(value) ? value : [value as SlotValue];
}

/**
 * One item of a list slot as a line of ingredients: words as typed, or an amount, unit and ingredient put together.
 * Example: `{ ingredient: 'banana', amount: 2 }` is "2 banana".
 */
export function itemLine(item: SlotValue): string {
  if (typeof item !== 'object' || Array.isArray(item)) return String(item);
  const parts = item as { readonly [name: string]: SlotValue };
  const amount = parts.amount ?? parts.portion ?? parts.quantity;
  const unit = parts.amount_unit ?? parts.portion_unit ?? parts.unit;
  return [amount, unit, parts.ingredient ?? parts.food ?? parts.recipe ?? parts.text]
    .filter((part) => part !== undefined)
    .join(' ');
}

/** The targets that were said, whole ones only. */
export function slotTargets(slots: Slots): readonly Target[] {
  return slotList(slots, 'target').filter(isTarget);
}

function isTarget(value: SlotValue): value is SlotValue & Target {
  if (typeof value !== 'object' || Array.isArray(value)) return false;
  const target = value as { readonly [name: string]: SlotValue };
  return typeof target.nutrient === 'string' && typeof target.amount === 'number';
}
