import type { Kitchen } from '../kitchen/kitchen.ts';
import type { Answer } from './answer.ts';
import type { ConversationState } from './conversation.ts';
import type { PersonRole, Request } from './request.ts';
import type { Intent, Slots } from './slots.ts';

/** A request that has been read, on its way to an answer. */
export interface Asked {
  readonly slots: Slots;
  readonly request: Request;
  readonly kitchen: Kitchen;
  /** What was said before in this conversation; a command fills what the request left out from here. */
  readonly conversation: ConversationState;
}

export interface Answered {
  readonly answer: Answer;
  /** What this conversation is about now, for follow-ups. Absent leaves it as it was. */
  readonly conversation?: ConversationState;
}

/** Who may ask a command and how it is explained: what is known of it before it is loaded. */
export interface CommandHead {
  readonly intent: Intent;
  /** Roles that may use it; others get a `not_allowed` problem that says who to ask. */
  readonly roles: readonly PersonRole[];
  readonly help: { readonly line: string; readonly examples: readonly string[] };
}

/** One thing the kitchen can be asked: who may, what it does, how it is explained. */
export interface Command extends CommandHead {
  answers(asked: Asked): Answered | Promise<Answered>;
}
