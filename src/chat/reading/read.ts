import type { Book } from '../../nutrition/book.ts';
import type { ConversationState } from '../conversation.ts';
import type { Reading, Slots, SlotValue } from '../slots.ts';
import { choose } from './choose.ts';
import { followUp } from './follow-up.ts';
import { emergencyTopic } from './intents/emergency.ts';
import { medicalTopic } from './intents/medical.ts';
import { lex } from './lexed.ts';

export interface ReadingContext {
  readonly book: Book;
  readonly conversation: ConversationState;
  readonly nowMs: number;
}

/**
 * Reads one message into an intent and the slots that were said; never throws on any text. An emergency wins over
 * everything, a medical question over everything else.
 * @example read('40 oat bars', context) // { intent: 'scale', slots: { quantity: 40, unit: 'bar', recipe: 'oat-bars' } }
 */
export function read(text: string, context: ReadingContext): Reading {
  const lexed = lex(text, context.book, context.nowMs);
  const emergency = emergencyTopic(lexed);
  if (emergency !== undefined) return { intent: 'emergency', slots: { topic: emergency } };
  const medical = medicalTopic(lexed);
  if (medical !== undefined) return { intent: 'medical', slots: { topic: medical } };
  const chosen = choose(lexed);
  const reading =
    followUp(lexed, context.conversation, chosen) ??
    (chosen ? { intent: chosen.reader.intent, slots: chosen.reader.slots(lexed) } : undefined);
  return reading
    ? { intent: reading.intent, slots: saidOnly(reading.slots) }
    : { intent: 'unknown', slots: {} };
}

/** Only what was said: no empty slots. */
function saidOnly(slots: Slots): Slots {
  const kept: { [name: string]: SlotValue } = {};
  for (const name in slots) {
    const value = slots[name];
    if (value !== undefined && value !== '') kept[name] = value;
  }
  return kept;
}
