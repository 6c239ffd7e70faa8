import type { Lexed } from '../lexed.ts';
import { BODY, BODY_SURE } from './words.ts';

const SOMEBODY_ELSE =
  / (?:he|she|him|her|hes|shes|they|theyre|kid|athlete|player|teammate|roommate|friend|intern|girl|guy|[a-z]{2,3}-\d\d) /;
const ANYBODY =
  / (?:i|im|ive|my|me|he|she|him|his|her|hes|shes|they|theyre|their|teammate|roommate|athlete|player|friend|daughter|son|girl|guy|kid|[a-z]{2,3}-\d\d) /;
const ALARM =
  / (?:help|hurry|quick|quickly|urgent|scared|panicking|worried|freaking out|what (?:do|should|can) (?:i|we) do|what now|now what|is (?:he|she) ok|not ok|bad shape) /;
const OF_THE_BODY = new RegExp(
  ` (?:${BODY_SURE}|${BODY}|eyes?|skin|hair|heart|blood|body|breath|breathing|nose|lips?|tongue|feel|feels|felt|feeling|hurts?|pain|sick|tired|weak|weigh|weight|sleep|sleeping|appetite|hungry|symptoms?|swallow\\w*|chew|cry|cried|mood|fat|skinny) `,
);
/** Hands, heads and backs that belong to a kitchen. */
const OF_THE_KITCHEN =
  / (?:on hand|by hand|in hand|head count|back door|heads up|feel free|feel like making) /;
const THINGS: readonly string[] = ['R', 'F', 'P', 'L', 'U', 'Q', 'X', 'H', 'C'];

/**
 * What a message that nothing else understood may still be: somebody's body or mood, or alarm about somebody. A human
 * should look at it, and saying whom to ask costs less than "I did not understand".
 */
export function lastLook({ said, syms }: Lexed): 'emergency' | 'medical' | undefined {
  if (THINGS.some((sym) => syms.has(sym)) || OF_THE_KITCHEN.test(said)) return undefined;
  if (ALARM.test(said) && SOMEBODY_ELSE.test(said)) return 'emergency';
  return ANYBODY.test(said) && OF_THE_BODY.test(said) ? 'medical' : undefined;
}
