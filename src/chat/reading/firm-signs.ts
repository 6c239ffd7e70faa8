import type { Intent } from '../slots.ts';
import { byShape } from './by-shape.ts';
import { isDelivery } from './intents/delivery.ts';
import type { Lexed } from './lexed.ts';
import { unitAfter } from './slots/numbers.ts';
import { TOLD_VERBS } from './told-verbs.ts';

const BEFORE_COUNT = '(?:(?!for |that |when |with |at |until )[a-zA-Z]+ ){0,5}?';
const THING =
  '(?:of )?(?:the |our |my |these |those |them |some )*(?:A |(?!for |by |at |in |on |to |from |with |and )[a-z]+ ){0,2}(?:of )?(?:R|P)(?: U)?';

/** What was done with pieces, by its verb, before or after them. */
const TOLD: readonly (readonly [intent: Intent, pattern: RegExp])[] = TOLD_VERBS.map(
  ({ intent, sure, loose, after }) => [
    intent,
    new RegExp(
      ` (?:${sure}) ${BEFORE_COUNT}(?<= )(?<!(?: at| to| by| until| till| per) )(?:N|B|all|everything|the rest) | (?:${loose}) (?:(?!for |that |when |with |at )[a-zS]+ ){0,3}?(?:N|B|all) ${THING} | (?:N|all) ${THING} (?:[a-z]+ )?(?:${after})| (?:${sure}|${loose}) (?:[a-z]+ ){0,3}R (?:all |about |like )*N (?:of (?:them|em) )?$`,
    ),
  ],
);

const FOUND_THERE =
  '(?:there are|there is|theres|there were|i see|we see|i found|we found|found|still have|only have|have only|only got|got only|down to|L has|L have|L holds|shelf has|shelf holds|L check|stock check|counting|count is|count was|that leaves|leaving|leaves us with)';

/** How many there are, said without a verb of counting. */
const FOUND: readonly RegExp[] = [
  / N (?:[a-zPR]+ )*on (?:the )?(?:shelf|L) (?:[a-z]+ )*(?:system|checked|sheet|ledger|list) /,
  / (?:were|we are|im|its) down to (?:[a-z]+ )?N /,
  / N (?:[a-zPRF]+ )*left (?:[a-zL]+ )*(?:i )?(?:checked|counted|looked) /,
  new RegExp(
    ` ${FOUND_THERE} (?:only |just |exactly |still |like |about |roughly |now |a total of )*N ${THING} (?!in (?:a|each|one|every|the) (?:batch|box|bag|pack|recipe|pan|slab)|per |for )`,
  ),
  / (?:set|change|correct|update|fix|adjust) (?:the )?(?:count (?:of|for|on) )?(?:the )?R (?:count )?(?:to|at) N $/,
  / R (?:count |total |stock )(?:is |are |now |at )*N $| R (?:is |are )?(?:now at |now |down to )N $/,
  / N (?:R|P) (?:in )?here (?!by )/,
  / count (?:of|for|on) (?:the )?(?:R|P) (?:is|was|at) N /,
  new RegExp(` (?:have|got|has) (?:only |about |still |just )*N ${THING} (?:left|remaining|remain) `),
  new RegExp(` N ${THING} (?:are |is )?still (?:there|here|in) `),
  /^ (?:there are |we have |theres |weve got )?(?:no|zero) (?:more )?R (?:left |remaining |anywhere |in (?:the )?L )*$/,
];

/** Sentences that tell what was made, in whatever order. */
const MADE_OTHERWISE: readonly RegExp[] = [
  / new batch (?:of )?(?:N|R) /,
  / (?:cranked out|knocked out|finished up|came out to|turned out|whipped up) .*N /,
  / (?:B|doubled|tripled) (?:[a-z]+ )*R (?:and|we) got N /,
  /^ (?:i|we) make N .*(?:already|done|today already) /,
  / R out of (?:[a-z]+ )?L (?:[a-z]+ )*(?:into|to|in) (?:[a-z]+ )?L /,
  /^ put (?:[a-z]+ )?N (?:[a-z]+ )?(?:R|P) (?:[a-z]+ )*(?:on|in|into) (?:[a-z]+ )?L /,
  /^ (?:please |pls |hey |just )*(?:log|record|enter) (?:in |that |down )?N (?:A )?(?:[a-z]+ )?R /,
  /^ (?:please |pls |just )*add N (?:A )?R (?:U )?(?:to|in) (?:the )?L /,
  / (?:ended up with|wound up with|came out with|yielded|netted) N (?:R|P) /,
  / B (?:batch )?(?:of )?(?:the )?R (?:is |are |all )*(?:done|finished|made|ready|baked) /,
  / batch (?:is )?(?:done|finished) (?:and )?(?:got|made|came to|yielded) N /,
];

/** Waste, without a verb or all at once. */
const TOSSED_OTHERWISE: readonly RegExp[] = [
  /^ (?:the )?waste(?:d)? (?:log |report |count |list |W |for W |today )*(?:was |is |are )?N (?:R|P) /,
  / N (?:R|P) .*(?:mold|moldy|garbage|in the trash|went bad|spoiled|fell on the floor) /,
  / (?:tossed|threw|thrown|dumped|trashed|binned|chucked|pitched|discarded|(?:had|have) to (?:toss|throw|dump|trash|bin|chuck|pitch|discard|scrap)) (?:out |away )?(?:the |that |this |a |our )*(?:whole|entire|full|complete) (?:[a-zRP]+ ){0,3}/,
];
const SERVED_OTHERWISE: readonly RegExp[] = [
  /^ (?:we |i |just )*(?:put|loaded|packed) N (?:[a-z]+ )?(?:R|P) (?:on|onto|in|into|for) (?:the |our )?(?:[a-z]+ )?(?:bus|van|plane|trip|road) /,
  /^ N (?:A )?(?:R |P )?(?:are |is |went |going )?on(?:to)? (?:the )?(?:[a-z]+ )?bus /,
];

/** A question, a wish or a plan tells nothing. */
const ASKED =
  / (?:remind|reminder|alert|should|can|could|may|do i|how|what|whats|hows|who|why|which|if|would|need|needs|want|wants|wanna|gonna|will|lets|gotta|supposed|trying|dont|didnt|havent|hasnt|wont|undo) |\? | (?:going|have|has|plan|ready) to (?!throw|toss|dump|trash|bin|chuck|pitch|discard|scrap)| to be |^ when | when (?:do|did|does|is|are|was|were|will|should|can) /;

/** A count is told first even where it names what was made when: "recount, oat bars made tuesday: 6". */
const COUNTED = / (?:counted|recount|recounted|inventory) .*N /;

const decided = byShape((lexed): Intent | undefined => {
  const { shape } = lexed;
  if (isDelivery(lexed)) return 'stock';
  if (ASKED.test(shape)) return undefined;
  if (COUNTED.test(shape)) return 'counted';
  let first: { intent: Intent; at: number } | undefined;
  for (const [intent, pattern] of TOLD) {
    const at = shape.search(pattern);
    if (at >= 0 && (first === undefined || at < first.at)) first = { intent, at };
  }
  if (SERVED_OTHERWISE.some((pattern) => pattern.test(shape))) return 'served';
  if (first !== undefined) return first.intent;
  if (TOSSED_OTHERWISE.some((pattern) => pattern.test(shape))) return 'tossed';
  if (MADE_OTHERWISE.some((pattern) => pattern.test(shape))) return 'made';
  return FOUND.some((pattern) => pattern.test(shape)) ? 'counted' : undefined;
});

/** The ledger entry a sentence plainly tells, in whatever order; a wrong entry is worse than a question. */
export function toldEntry(lexed: Lexed): Intent | undefined {
  const intent = decided(lexed);
  return intent === 'counted' && countsPeople(lexed) ? undefined : intent;
}

/** "there are 31 people" counts nobody's bars. */
const countsPeople = ({ seen }: Lexed): boolean =>
  seen.some((atom, i) => atom.sym === 'N' && unitAfter(seen, i).unit === 'person');
