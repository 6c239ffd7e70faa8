import type { Chat, Reply } from '../chat/chat.ts';
import type { Asker } from '../chat/request.ts';
import type { Clock } from '../kitchen/kitchen.ts';

/** One person at one terminal: all that is said in it is one conversation. */
export interface Session {
  ask(text: string): Promise<Reply>;
}

export function createSession(chat: Chat, clock: Clock, asker: Asker): Session {
  return {
    ask: (text) => chat.ask({ text, asker, conversation: 'terminal', isPrivate: true, nowMs: clock.nowMs() }),
  };
}
