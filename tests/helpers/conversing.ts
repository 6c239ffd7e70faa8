import { afterEach, beforeEach } from 'vitest';
import type { Answer } from '../../src/chat/answer.ts';
import { type Chat, createChat, type Reply } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { CalendarReach } from '../../src/kitchen/games/calendar/reach.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { lazyMemory, type Memory } from '../../src/open-memory.ts';
import { freshPlace, type Place } from './database.ts';
import { at, book as demoBook } from './stock-kitchen.ts';

export interface Asking {
  readonly when?: string;
  readonly who?: string;
  readonly role?: PersonRole;
  readonly workspace?: string;
  readonly requestKey?: string;
}

/** A conversation with the demo kitchen and a fresh memory for each test of a file; staff speak unless told. */
export function conversing(startsAt: string, book: Book = demoBook, calendars?: CalendarReach) {
  let memory: Memory;
  let place: Place;
  let chat: Chat;
  let nowMs = 0;
  beforeEach(async () => {
    nowMs = at(startsAt);
    place = await freshPlace();
    const clock = { nowMs: () => nowMs };
    memory = lazyMemory(place.url, clock.nowMs);
    chat = createChat({ ...memory, book, clock, ...(calendars ? { calendars } : {}) }, (error) => {
      throw error;
    });
  });
  afterEach(async () => {
    await memory.close();
    await place.remove();
  });

  async function say(text: string, asking: Asking = {}): Promise<Reply> {
    if (asking.when !== undefined) nowMs = at(asking.when);
    const { who = 'ST-01', role = 'staff', workspace = 'W1', requestKey } = asking;
    return chat.ask({
      text,
      asker: { role, who, workspace },
      conversation: `${workspace}-${who}`,
      isPrivate: true,
      nowMs,
      ...(requestKey === undefined ? {} : { requestKey }),
    });
  }
  async function answer(text: string, asking: Asking = {}): Promise<Answer> {
    const reply = await say(text, asking);
    if (!reply.answer) throw new Error(`${text}: ${JSON.stringify(reply.error)}`);
    return reply.answer;
  }
  const shown = async (text: string, asking: Asking = {}) => plainText(await answer(text, asking));
  const data = async (text: string, asking: Asking = {}) => (await answer(text, asking)).data;
  const refused = async (text: string, asking: Asking = {}) => (await say(text, asking)).error;
  return { say, answer, shown, data, refused };
}
