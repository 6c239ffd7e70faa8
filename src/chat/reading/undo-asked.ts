import type { ConversationState } from '../conversation.ts';
import type { Intent } from '../slots.ts';
import { byShape } from './by-shape.ts';
import type { Lexed } from './lexed.ts';

/** An entry is named, or undoing itself. */
const NAMED =
  / undo (?!work|button)| (?:scratch|remove|delete|revert|cancel|forget|erase|reverse|take back) (?:that|the|my|this)? ?(?:last|previous|latest) (?:one|entry|log|thing|record|served|serving|toss|tossed|count|waste)? ?|^ (?:[a-z]+ ){0,2}(?:take|took) (?:that|it) back $/;
/** Only means an entry where one was just made. */
const SHORT =
  /^ (?:oops |no |wait |sorry |actually |ok |pls |please )*(?:scratch|cancel|forget|revert|delete|remove|ignore|strike|nix|reverse) (?:that|it|this|those)(?: one| entry)?(?: please| pls)? $|^ (?:oops |ok |sorry )*(?:never ?mind|nvm)(?: that)? $/;
/** A question how to, a reminder, a number put right: none of these undoes. */
const NO_UNDO = / (?:how|remind|reminder|reminders) |^(?!.* undo ).* (?:N|game|W|list|item|items|calendar) /;

const ENTRIES: ReadonlySet<Intent> = new Set(['made', 'served', 'tossed', 'counted', 'temperature']);

const howAsked = byShape(({ shape }): 'named' | 'short' | undefined => {
  if (NO_UNDO.test(shape)) return undefined;
  if (NAMED.test(shape)) return 'named';
  return SHORT.test(shape) ? 'short' : undefined;
});

/** Whether somebody wants an entry taken back, and of which kind: the one named, else the one just made. */
export function undoAsked(lexed: Lexed, { last }: ConversationState): Intent | undefined {
  const wasEntry = last !== undefined && ENTRIES.has(last.intent);
  const how = howAsked(lexed);
  if (how === undefined || (how === 'short' && !wasEntry)) return undefined;
  const { shape } = lexed;
  if (/ (?:count|counted|recount) /.test(shape)) return 'counted';
  if (/ (?:toss|tossed|waste|trash|trashed) /.test(shape)) return 'tossed';
  return last?.intent === 'counted' || last?.intent === 'tossed' ? last.intent : 'served';
}
