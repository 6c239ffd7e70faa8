import type { ConversationState } from '../../conversation.ts';
import type { Slots } from '../../slots.ts';

/** Slots that say how much is made; a new one replaces them all. */
const SIZE_SLOTS = [
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
] as const;

/** Slots of one moment: they never carry over. */
const MOMENT_SLOTS = ['problem', 'avoid', 'when', 'made_pieces'] as const;

/**
 * Fills a follow-up ("and for 60", "in grams", "double it") from the batch this conversation is about.
 * A request that names another recipe starts afresh.
 */
export function withConversation(said: Slots, conversation: ConversationState): Slots {
  const { last } = conversation;
  if (last?.intent !== 'scale' || (said.recipe !== undefined && said.recipe !== last.slots.recipe))
    return said;
  if (said.quantity === undefined && said.factor !== undefined && said.recipe === undefined) {
    return timesBefore(said, last.slots);
  }
  const newSize = ['quantity', 'factor', 'pan', 'limit_by', 'amount', 'parts'].some(
    (name) => said[name] !== undefined,
  );
  const kept = without(last.slots, newSize ? SIZE_SLOTS : MOMENT_SLOTS);
  return { ...without(kept, MOMENT_SLOTS), ...said };
}

/** "double it" after 40 bars is 80 bars. */
function timesBefore(said: Slots, before: Slots): Slots {
  const made = before.made_pieces;
  const factor = said.factor;
  if (typeof made !== 'number' || typeof factor !== 'number')
    return { ...without(before, SIZE_SLOTS), ...said };
  const { factor: _said, ...rest } = said;
  return { ...without(without(before, SIZE_SLOTS), MOMENT_SLOTS), ...rest, quantity: made * factor };
}

function without(slots: Slots, names: readonly string[]): Slots {
  return Object.fromEntries(Object.entries(slots).filter(([name]) => !names.includes(name)));
}
