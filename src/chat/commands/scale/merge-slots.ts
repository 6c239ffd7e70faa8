import type { ConversationState } from '../../conversation.ts';
import type { Slots, SlotValue } from '../../slots.ts';

/** Slots that say how much is made; a new one replaces them all. */
const SIZE_SLOTS: ReadonlySet<string> = new Set([
  'quantity',
  'unit',
  'factor',
  'pan',
  'pan_from',
  'pan_count',
  'ingredient',
  'amount',
  'amount_unit',
  'amount_min',
  'amount_max',
  'limit_by',
  'portion',
  'portion_unit',
  'pieces',
  'pieces_was',
  'parts',
  'made_pieces',
]);

/** Slots of one moment: they never carry over. */
const MOMENT_SLOTS: ReadonlySet<string> = new Set(['problem', 'when', 'made_pieces']);

const SIZE_AND_MOMENT: ReadonlySet<string> = new Set([...SIZE_SLOTS, ...MOMENT_SLOTS]);

/**
 * Fills a follow-up ("and for 60", "in grams", "double it") from the batch this conversation is about.
 * A request that names another recipe starts afresh.
 */
export function withConversation(said: Slots, conversation: ConversationState): Slots {
  const { last } = conversation;
  // "For 40", after a nut-free version, is of that version; a recipe named anew is as on its card.
  if (last?.intent === 'swap' && said.recipe === undefined && last.slots.avoid !== undefined)
    return { avoid: last.slots.avoid, ...said };
  if (last?.intent !== 'scale' || (said.recipe !== undefined && said.recipe !== last.slots.recipe))
    return said;
  if (said.quantity === undefined && said.factor !== undefined && said.recipe === undefined) {
    return timesBefore(said, last.slots);
  }
  const newSize = ['quantity', 'factor', 'pan', 'limit_by', 'amount', 'parts'].some(
    (name) => said[name] !== undefined,
  );
  const { avoid: _avoided, ...asOnCard } = last.slots;
  const before = said.recipe === undefined ? last.slots : asOnCard;
  return over(before, newSize ? SIZE_AND_MOMENT : MOMENT_SLOTS, said);
}

/** "double it" after 40 bars is 80 bars. */
function timesBefore(said: Slots, before: Slots): Slots {
  const made = before.made_pieces;
  const factor = said.factor;
  if (typeof made !== 'number' || typeof factor !== 'number') return over(before, SIZE_SLOTS, said);
  const { factor: _said, ...rest } = said;
  return over(before, SIZE_AND_MOMENT, { ...rest, quantity: made * factor });
}

/** What was said, on top of what stays of the slots before. */
function over(before: Slots, dropped: ReadonlySet<string>, said: Slots): Slots {
  const merged: { [name: string]: SlotValue | undefined } = {};
  for (const name in before) if (!dropped.has(name)) merged[name] = before[name];
  for (const name in said) merged[name] = said[name];
  return merged;
}
