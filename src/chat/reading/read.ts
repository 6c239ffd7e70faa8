import type { Book } from '../../nutrition/book.ts';
import type { ConversationState } from '../conversation.ts';
import type { Reading } from '../slots.ts';

export interface ReadingContext {
  readonly book: Book;
  readonly conversation: ConversationState;
  readonly nowMs: number;
}

/** Reads one message into an intent and the slots that were said; never throws on any text. */
export function read(_text: string, _context: ReadingContext): Reading {
  return { intent: 'unknown', slots: {} };
}
