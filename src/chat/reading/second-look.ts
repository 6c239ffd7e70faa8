import type { Intent } from '../slots.ts';
import type { Lexed } from './lexed.ts';

const EVENT =
  '(?:lift|practice|game|games|match|matches|training|workout|race|races|heats|meet|swim|gym|weights|conditioning|marathon|tournament|doubleheader|double header|S|bus ride|travel day)';

/**
 * What a request without a verb or with an unusual one is about, by what it names. Tried in this order, and only when
 * the grammars of the intents found nothing.
 */
const BY_WHAT_IS_NAMED: readonly (readonly [intent: Intent, pattern: RegExp])[] = [
  ['unknown', / who won | (?:essay|poem|homework|lyrics) /],
  ['temperature', / (?:lost power|power (?:is |was )?(?:out|off|back)|outage) | T .*L | L .*T /],
  ['temperature', / (?:left|forgot|sat|sitting|been|out) .*(?:bag|van|car|counter|sun|trunk|bus|out) .*Z /],
  ['temperature', / (?:been|left|forgot) .*(?:Z|N hours) /],
  ['made', /^ (?:nope|no|sorry|actually|oops|wait) (?:it |there |that )*(?:was|were|is|are|should be) N $/],
  ['tossed', / (?:scratch|forget|cancel|remove|revert) (?:that|the|my) (?:last|entry)/],
  [
    'stock',
    / (?:going (?:bad|off)|past (?:its|their) date|go (?:bad|off)|turning|out of date|expires?|expiring) /,
  ],
  ['stock', / (?:how many days|how long) .*(?:keep|last|hold|good|stay) /],
  ['stock', / how many (?:[a-z]+ )?(?:R|P) (?:[a-z]+ )?(?:made|left|there) |what did we make /],
  ['stock', / L (?:contents|inventory|list) | (?:in|on) (?:[a-z]+ )?L \?? ?$/],
  ['swap', / F (?:[a-z]+ )?(?:gone|finish|finished|over|low|short|missing|bad|empty|expired) /],
  ['swap', / (?:in lieu of|in place of|sub|subs|substitute|replace|replacing|instead|swap|alternative) /],
  ['swap', / what else (?:could|can|do) (?:i|we) use /],
  ['fuel', / (?:starving|hungry|fuel|snack|snacks|eat|meal|food|feed|feeding|bar or shake) .*(?:Z|W|S) /],
  ['fuel', new RegExp(` ${EVENT} .*(?:eat|have before|snack|feed|fuel|carbs|M|food|meal|shake) `)],
  ['fuel', new RegExp(` (?:eat|have|snack|feed|fuel|food|meal|M|pregame|postgame) .*${EVENT} `)],
  [
    'fuel',
    / (?:pregame|pre game|postgame|post game|preworkout|postworkout) | between .*Z | Z (?:gap|apart|between) /,
  ],
  ['fuel', new RegExp(` (?:finished|done with|after|before|during|between) (?:[a-z]+ )*${EVENT} `)],
  [
    'schedule',
    / (?:games?|match|matches|meet|opponent|kickoff|tip off|tipoff|first pitch|face off|faceoff) /,
  ],
  ['macros', /^ (?:Q|N) (?:of )?F (?:(?:and |plus |with )?(?:(?:Q|N) (?:of )?)?F )+$/],
  ['cost', / (?:spending|spend|price|cost|dollars|money|budget|C) /],
  ['allergens', / (?:allergy|allergic|alergy|intolerant|intolerance) | A .*(?:R|P|options?|snacks?) /],
  ['allergens', / (?:R|P|it|that|this) .*(?:A|V) | (?:V|F) in (?:[a-z]+ )?R | ^ (?:A )+/],
  ['macros', / M /],
  ['scale', / N (?:[a-z]+ ){0,3}(?:R|P) | (?:R|P) (?:[a-z]+ ){0,4}N | (?:R|P) N | more (?:R|P) .*N /],
  ['recipes', / what (?:can|could|does|do) (?:[a-z]+ )*(?:kitchen|you|we|u) (?:[a-z]+ )?(?:make|cook|have) /],
  ['help', /^ \? $/],
];

/** The intent a request is probably about, by what it names alone. */
export function secondLook(lexed: Lexed): Intent | undefined {
  return BY_WHAT_IS_NAMED.find(([, pattern]) => pattern.test(lexed.shape))?.[0];
}
