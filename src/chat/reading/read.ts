import type { Book } from '../../nutrition/book.ts';
import type { ConversationState } from '../conversation.ts';
import type { Intent, Reading, Slots, SlotValue } from '../slots.ts';
import { choose, readerOf } from './choose.ts';
import { toldEntry } from './firm-signs.ts';
import { followUp } from './follow-up.ts';
import { type Lexed, lex } from './lexed.ts';
import { requestClause } from './request-clause.ts';
import { rosterSentence } from './roster-sentence.ts';
import { secondLook } from './second-look.ts';
import { emergencyTopic } from './signs/emergency.ts';
import { lastLook } from './signs/last-look.ts';
import { medicalTopic } from './signs/medical.ts';
import { undoAsked } from './undo-asked.ts';

/** A rule this strong in the part that asks goes before what is said around it. */
const SURE_OF_PART = 6;

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
  const overridden = withOverride(text, context);
  if (overridden !== undefined) return overridden;
  const released = releaseSaid(text);
  if (released !== undefined) return released;
  const roster = rosterSentence(lexed);
  if (roster !== undefined) return { intent: 'allergens', slots: roster };
  const undone = undoAsked(lexed, context.conversation);
  if (undone !== undefined) return { intent: undone, slots: { undo: true } };
  const told = toldEntry(lexed);
  if (told !== undefined) return asked(told, lexed);
  const chosen = chosenFor(lexed);
  const reading =
    followUp(lexed, context.conversation, chosen) ??
    (chosen ? { intent: chosen.reader.intent, slots: chosen.reader.slots(lexed) } : undefined);
  if (!reading) return asked(secondLook(lexed) ?? lastLook(lexed) ?? 'unknown', lexed);
  return { intent: reading.intent, slots: saidOnly(reading.slots) };
}

/** What the part that asks is about, where a long message has one that a rule knows; else the whole of it. */
function chosenFor(lexed: Lexed): ReturnType<typeof choose> {
  const clause = requestClause(lexed);
  const asked = clause && choose(clause);
  return asked && asked.score >= SURE_OF_PART ? asked : choose(lexed);
}

/** "made 20 oat bars override: …": what follows is a reason to keep, whatever foods and numbers it names. */
function withOverride(text: string, context: ReadingContext): Reading | undefined {
  if (!/override/i.test(text)) return undefined;
  const match = /^(.*\S)[\s,;(]+override\b[\s:,-]*(.*?)\)?\s*$/is.exec(text);
  if (!match) return undefined;
  const [, batch = '', reason = ''] = match;
  const { intent, slots } = read(batch, context);
  return intent === 'made' ? { intent, slots: { ...slots, override: reason } } : undefined;
}

/** "release B1, B2: probe read 39F": staff's decision about held batches; what follows is a reason to keep. */
function releaseSaid(text: string): Reading | undefined {
  const match =
    /^\s*(?:please )?released? (?:batch(?:es)? )?(b\d+(?:(?:\s*,\s*|\s+and\s+|\s+)b\d+)*)\b(.*)$/is.exec(
      text,
    );
  if (!match) return undefined;
  const [, codes = '', rest = ''] = match;
  const release = [...new Set(codes.toUpperCase().match(/B\d+/g) ?? [])].join(',');
  const reason = rest.replace(/^[\s:,;.-]+/, '').trim();
  return { intent: 'served', slots: { release, ...(reason === '' ? {} : { reason }) } };
}

/** The reading of a request whose intent is settled. */
function asked(intent: Intent, lexed: Lexed): Reading {
  return { intent, slots: saidOnly(readerOf(intent)?.slots(lexed) ?? {}) };
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
