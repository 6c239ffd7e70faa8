import type { Asked } from '../../command.ts';
import { foodsNamed } from '../../reading/foods-named.ts';
import type { Slots } from '../../slots.ts';

const OTHER_READINGS = ['recipe', 'compare', 'remove', 'add', 'items', 'amount', 'portion', 'quantity'];

/** "Carrots and hummus" names two foods and no amount: one of each, where a slot holds only the first. */
export function withSeveralFoods(slots: Slots, { request, kitchen }: Asked): Slots {
  if (slots.ingredient === undefined || OTHER_READINGS.some((name) => slots[name] !== undefined))
    return slots;
  const items = foodsNamed(request.text, kitchen.book, request.nowMs);
  if (items.length < 2) return slots;
  const { ingredient: _first, ...others } = slots;
  return { ...others, items };
}
