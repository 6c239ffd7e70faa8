import { Problem } from '../nutrition/problem.ts';
import type { Intent, Reading } from './slots.ts';

/** Requests that write what happened down. */
const ENTRIES: ReadonlySet<Intent> = new Set(['made', 'served', 'tossed', 'counted', 'temperature']);

/** Asked, not told. "Can you log …" tells; so does "have 12 left". */
const ASKS =
  /^\s*(?:did|does|who|what if|(?:can|could|may|should|shall|would|will) (?:i|we|they|he|she|anyone|somebody)|(?:have|has|had|are|is|were|do) (?:we|they|you|i|he|she|anyone|anybody|somebody)|was (?!\d))\b/i;
const LOGS = /\b(?:log|record|note|mark|enter|write|put)\b/i;
/** Not so, or not yet. */
const DENIES =
  /\b(?:haven'?t|hasn'?t|hadn'?t|didn'?t|did not|have not|don'?t|do not|won'?t|will not|not yet|never)\b|\b(?:we|i|they|he|she)(?:'ll| will| are going to|'re going to|'m going to| am going to| plan to)\b/i;
/** Two numbers for one: "12-15", "20 or 30". */
const RANGE = /(?<![\w/:.-])\d{1,3}\s*(?:-|–|to|or)\s*\d{1,3}(?![\d/:.-])(?=\s*(?:°|[fc]\b|[a-z]|$))/i;

/**
 * A ledger holds what happened and nothing else: a question, a denial, a plan and a number that is two are asked about.
 * @throws Problem `needs_more`; nothing was written down then.
 */
export function refuseUnhappened(text: string, { intent, slots }: Reading): void {
  if (!ENTRIES.has(intent) || slots.undo === true) return;
  if (intent === 'temperature' && slots.temp_f === undefined && slots.temp_c === undefined) return;
  if (RANGE.test(text))
    throw new Problem(
      'needs_more',
      'Which number? Nothing was logged.',
      'Write the one that was counted or read, like "made 20 oat bars" or "fridge a 38F".',
    );
  if ((ASKS.test(text) && !LOGS.test(text)) || DENIES.test(text))
    throw new Problem(
      'needs_more',
      'Nothing was logged: that did not say it happened.',
      'Write what happened, like "made 20 oat bars" or "fridge a 38F"; ask "stock" for what is there.',
    );
}
