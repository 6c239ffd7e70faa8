import type { Asked } from '../command.ts';
import type { ConversationState } from '../conversation.ts';
import type { Intent } from '../slots.ts';

/** What a reader adds by itself; an answer to a question may carry them too. */
const BESIDE = new Set(['unit', 'reason', 'time_unsure']);
/** Slots that are filled only when one of our options was picked. */
const PICKED = new Set(['swap', 'replaced']);

/**
 * The request with what it answers filled in: when the message is just the answer to our question, the slots of the
 * request we asked about. Anything that says more is a new request.
 */
export function withQuestion(asked: Asked): Asked {
  const { question } = asked.conversation;
  if (!question) return asked;
  const answer = asked.slots[question.slot];
  if (answer === undefined) return asked;
  const said = Object.keys(asked.slots).filter((name) => asked.slots[name] !== undefined);
  const isMore = said.some((name) => name !== question.slot && !BESIDE.has(name));
  // A whole entry is never an answer: "made 24 oat bars with soy butter instead of peanut butter" is another batch.
  const isEntry = asked.slots.quantity !== undefined && asked.slots.recipe !== undefined;
  if (isMore && (isEntry || !PICKED.has(question.slot))) return asked;
  return { ...asked, slots: { ...question.reading.slots, [question.slot]: answer } };
}

/** The conversation once something was logged: no question is open, and this is what it is about. */
export function settled(asked: Asked, intent: Intent, recipeIds: readonly string[] = []): ConversationState {
  const { question: _answered, ...kept } = asked.conversation;
  const [recipeId] = recipeIds;
  return {
    ...kept,
    last: { intent, slots: asked.slots },
    ...(recipeId === undefined || new Set(recipeIds).size > 1 ? {} : { recipeId }),
  };
}
