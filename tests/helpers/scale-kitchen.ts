import type { Answer } from '../../src/chat/answer.ts';
import type { Command } from '../../src/chat/command.ts';
import type { ConversationState } from '../../src/chat/conversation.ts';
import type { Slots } from '../../src/chat/slots.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { noMemory } from '../../src/kitchen/no-memory.ts';
import type { Book } from '../../src/nutrition/book.ts';

const NOW_MS = Date.UTC(2026, 8, 7, 14);

export const kitchenOf = (book: Book): Kitchen => ({
  book,
  clock: { nowMs: () => NOW_MS },
  ...noMemory,
});

/** Asks one command with slots, one conversation through; what a surface would do, without reading text. */
export function conversationWith(command: Command, kitchen: Kitchen): (slots: Slots) => Promise<Answer> {
  let conversation: ConversationState = {};
  return async (slots) => {
    const request = {
      text: '',
      asker: { role: 'intern', who: 'IN-01', workspace: 'demo' },
      conversation: 'bench',
      isPrivate: true,
      nowMs: NOW_MS,
    } as const;
    const answered = await command.answers({ slots, request, kitchen, conversation });
    conversation = answered.conversation ?? conversation;
    return answered.answer;
  };
}

/** All words of an answer, as one text. */
export const wordsOf = (answer: Answer): string =>
  [
    answer.title,
    ...answer.sections.flatMap((section) =>
      section.kind === 'text'
        ? [section.text]
        : section.kind === 'table'
          ? section.rows.map((row) => row.join(' | '))
          : section.items,
    ),
    ...answer.cautions,
  ].join('\n');
