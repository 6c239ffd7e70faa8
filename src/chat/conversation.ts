import type { Reading } from './slots.ts';

/** What a follow-up ("cut into 8", "nut free?") may lean on. */
export interface ConversationState {
  /** The last request that got an answer, as read, with what it leaned on filled in. */
  readonly last?: Reading;
  /** Id of the recipe last spoken of. */
  readonly recipeId?: string;
  /** Pieces of the batch on the bench: what was scaled last, for rescues. */
  readonly batchPieces?: number;
  /** A short question we asked; the next message may be its answer. */
  readonly question?: {
    readonly slot: string;
    readonly options: readonly string[];
    readonly reading: Reading;
  };
}

export interface ConversationMemory {
  get(conversation: string): ConversationState;
  set(conversation: string, state: ConversationState): void;
}

/** Keeps the most recent conversations in this process; the oldest is forgotten first. */
export function createConversationMemory(most = 5_000): ConversationMemory {
  const states = new Map<string, ConversationState>();
  return {
    get: (conversation) => states.get(conversation) ?? {},
    set(conversation, state) {
      states.delete(conversation);
      states.set(conversation, state);
      const oldest = states.keys().next();
      if (states.size > most && !oldest.done) states.delete(oldest.value);
    },
  };
}
