import type { Answer } from '../../src/chat/answer.ts';
import type { Answered, Command } from '../../src/chat/command.ts';
import type { ConversationState } from '../../src/chat/conversation.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { Slots } from '../../src/chat/slots.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { noMemory } from '../../src/kitchen/no-memory.ts';
import { PANTRY, RECIPES } from '../nutrition/swap/pantry.ts';

/** A kitchen with the test pantry and its one recipe. */
export const pantryKitchen = (allergenList: 'us' | 'eu' = 'us'): Kitchen => ({
  clock: { nowMs: () => 0 },
  ...noMemory,
  book: {
    foods: PANTRY,
    recipes: RECIPES,
    problems: [],
    settings: {
      name: 'Test kitchen',
      timeZone: 'America/Chicago',
      allergenList,
      caloriesForAthletes: false,
      emergencyNumber: '911',
      contacts: {
        dietitian: 'the dietitian',
        physician: 'the physician',
        athleticTrainer: 'the athletic trainer',
      },
      pans: [],
      locations: [],
      mostDays: 7,
      prepTime: '09:00',
      stockCheckTime: '08:00',
      readingTimes: [],
      closedWeekdays: [],
      spareShare: 0.1,
      piecesPerPerson: 1,
      par: new Map(),
    },
  },
});

export interface AskOptions {
  readonly role?: PersonRole;
  readonly conversation?: ConversationState;
  readonly list?: 'us' | 'eu';
  readonly text?: string;
  /** False where others read along. */
  readonly isPrivate?: boolean;
}

/** Asks one command with slots as the reading would give them. */
export async function askCommand(
  command: Command,
  slots: Slots,
  options: AskOptions = {},
): Promise<Answered> {
  return command.answers({
    slots,
    kitchen: pantryKitchen(options.list),
    conversation: options.conversation ?? {},
    request: {
      text: options.text ?? 'as read',
      asker: { role: options.role ?? 'staff', who: 'WP-07', workspace: 'test' },
      conversation: 'test',
      isPrivate: options.isPrivate ?? true,
      nowMs: 0,
    },
  });
}

/** Everything an answer shows, as one text. */
export const shown = (answer: Answer): string =>
  [answer.title, JSON.stringify(answer.sections), ...answer.cautions].join('\n');
