import type { Slots } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find } from '../slots/find.ts';
import { avoid, dish, ingredient, knownRecipe, nameOf } from '../slots/names.ts';
import { amount, numberOf } from '../slots/numbers.ts';

const THING = '(?:F|M|V|A|Y|R)';

export const swap: IntentReader = {
  intent: 'swap',
  cues: [
    'F',
    'M',
    'A',
    'V',
    'Y',
    'swap',
    'sub',
    'substitute',
    'instead',
    'replace',
    'replacement',
    'alternative',
    'out',
    'version',
  ],
  rules: [
    [
      /^ (?:[a-z]+ )?(?:ran|run|running|were) (?:out|outta) (?:of )?(?:[a-z]+ )?F (?:for (?:the )?(?:R|P) )?$/,
      8,
    ],
    [/^ (?:the |our )?F (?:just )?(?:ran|run) out (?!at|by)/, 7.6],
    [
      /^ what (?:replaces|can replace|could replace|subs) (?:for )?(?:N |Q )?(?:of )?(?:F|A) (?:in|for) (?:the )?(?:R|P) /,
      9,
    ],
    [/^ (?:no )?A in (?:the )?(?:R|P) what (?:instead|else|now) $/, 8.6],
    [/^ (?:is |can |use )?F for (?:[a-z]+ )?F (?:ok |okay |fine |good |same amount |works? )?\?? ?$/, 7.2],
    [/ F (?:[a-z]+ )*(?:into|in|to|for) (?:[a-z]+ )?(?:R|P) instead of /, 9.6],
    [/ use F (?:and )?not F /, 9],
    [/ in lieu of /, 8.5],
    [
      / F (?:[a-z]+ )?(?:is |are |was )?(?:gone|finish|finished|out|empty|bad|spoiled|expired|moldy) .*(?:use|what|instead|F|else|\?) /,
      8,
    ],
    [
      / (?:no|out of|short on|low on|store had no|only got|only have|dont have) (?:[a-z]+ )?F (?:[a-z]+ )*(?:only |so |but |just )(?:[a-z]+ )*F /,
      8.4,
    ],
    [/ R (?:but )?(?:A )(?:A )*$/, 6.6],
    [
      / what (?:else )?(?:can|could|do|should) (?:i|we|you) (?:use|put|add) (?:now|instead|then)? ?\?? ?$/,
      6.5,
    ],

    [new RegExp(` (?:out|outta|short|low|ran out) (?:of|on) (?:[a-z]+ ){0,2}${THING} `), 7.5],
    [
      new RegExp(
        ` (?:swap|swapping|sub|subs|subbing|substitute|substitutes|substitution|replace|replacing|replacement|switch|trade) (?:[a-z]+ ){0,4}(?:Q )?(?:of )?${THING} `,
      ),
      8.5,
    ],
    [/ (?:swap|sub|substitute|substitution|substitutes|replacement|alternative|alternatives) /, 6.5],
    [/ instead of (?:[a-z]+ )?(?:F|M|V|Y|A) /, 7.5],
    [/ (?:F|Y) instead /, 7],
    [/ in place of /, 8],
    [/ (?:alternative|alternatives|replacement|sub|substitute) (?:for|of|to) /, 8.5],
    [
      / (?:no more|no|dont have|havent got|havent|havent any|have no|got no|theres no|there is no|we lack|missing|without|cant find|all out of|finished the|used up|is finished|are finished) (?:[a-z]+ ){0,2}(?:F|M|Y) /,
      6,
    ],
    [
      / (?:no more|dont have|havent got|have no|got no|theres no|there is no) (?:[a-z]+ ){0,3}(?:F|M|Y) .*(?:what|else|use|can|instead|\?) /,
      7.5,
    ],
    [/ (?:F|M|Y) (?:[a-z]+ )*(?:is|are|was|all) (?:all )?(?:out|gone|finished|empty) /, 7],
    [/^ no (?:more )?(?:F|M|Y) /, 6.5],
    [/^ A (?:[a-z]+ )*$/, 5],
    [/ A (?:and A )*(?:version|option|alternative|variation|variant|one) /, 8],
    [/ (?:version|variation|variant) /, 6],
    [/ (?:make|do|turn|get) (?:[a-z]+ ){0,3}(?:R |P |it |them |this |that |these )?(?:A |into A )/, 7],
    [/^ (?:A )+(?:and A )*(?:R|P) /, 6],
    [/ (?:how|can) .*(?:make|do) .*(?:R|P|it|them|these|this) .*A /, 8.2],
    [
      / (?:what|anything) (?:else )?(?:can|could|do|should) (?:[a-z]+ )*use (?:[a-z]+ )*(?:for|instead|as) /,
      6.5,
    ],
    [/ use (?:[a-z]+ )?(?:F|Y) (?:for|instead|in place) /, 7.5],
    [/ can (?:i|we|you|u) use (?:[a-z]+ )?(?:F) /, 5.5],
    [/ (?:F|M) (?:is|are)? ?(?:what else|any ideas|use what) /, 6],
    [/ what else /, 4],
    [
      / (?:what|anything|something) (?:would|could|can|will) (?:work|go|do|i use|we use) (?:in|instead of) (?:its|their|the) place /,
      9.2,
    ],
    [/^ F (?:to|into) F (?:ok|okay|fine|good|works?)? ?(?:\? )?$/, 7.2],
    [
      / (?:any|a) way to (?:do|make|get|have) (?:the |our |those )?(?:R|P) (?:[a-z]+ )*(?:for|without|so) /,
      8.6,
    ],
    [/ F (?:can |could |would )?(?:replace|replaces|stand in for|sub for|work for|work instead of) /, 8.6],
    [/ (?:smth|something|sth|anything) else (?:than|instead of|but|for) (?:[a-z]+ )?(?:F|M|Y) /, 8.4],
    [/ F (?:not F|instead|and not F) (?:[a-z]+ )*(?:ok|okay|fine|good|work|works) (?:[a-z]+ )*(?:R|P) /, 8],
    [/ (?:R|P) without (?:F|A|V) (?:\? )?$/, 5.5],
    [
      / (?:cant|cannot) (?:have|eat) .*(?:what do (?:we|i) do|what (?:can|should) (?:we|i) (?:do|use|make)) /,
      8.2,
    ],
    [/ (?:besides|other than|apart from|except|rather than) (?:[a-z]+ )?(?:F|M|Y|V) /, 8],
    [/ can (?:[a-zRP]+ )*(?:be|made|make|do|without) (?:[a-z]+ )*A /, 8],
    [/ for (?:F|M) (?:because|since|cuz) /, 5],
  ],
  slots: (lexed) => ({ ...pair(lexed), ...avoid(lexed), ...recipeOf(lexed), ...measured(lexed) }),
};

/** The first food is missing; the second, told after it, is at hand. */
const LACKS =
  / (?:no|out of|out|short on|short|low on|low|ran out of|dont have|lacking|missing) (?:[a-z]+ ){0,3}F .*F | F (?:[a-z]+ ){0,2}(?:gone|finished|finish|out|empty|bad|spoiled|expired) .*F /;

const recipeOf = (lexed: Lexed): Slots =>
  / (?:version|variation|variant) /.test(lexed.shape) || !lexed.syms.has('F')
    ? dish(lexed)
    : knownRecipe(lexed);

/** "2 cups of milk", "2 eggs". */
function measured(lexed: Lexed): Slots {
  const said = amount(lexed);
  const count = said.amount === undefined ? find(lexed, / N F /)?.[0] : undefined;
  return count ? { amount: numberOf(count), amount_unit: 'each' } : said;
}

/** Old and new by the grammar of the verb: "sub NEW for OLD", "replace OLD with NEW", "NEW instead of OLD". */
function pair(lexed: Lexed): Slots {
  const newOld =
    find(
      lexed,
      / (?:F|Y) (?:[a-z]+ )?(?:(?:into|in|to) (?:[a-z]+ )?(?:R|P) )?(?:instead of|in place of|in lieu of|rather than|and not|not) (?:[a-z]+ )?(?:F|M|Y|A) /,
    ) ??
    find(
      lexed,
      / (?:sub|subs|subbing|substitute|use|using) (?:[a-z]+ )?(?:F|Y) (?:[a-z]+ )?(?:for|instead of|in place of) (?:[a-z]+ )?(?:F|M|Y) /,
    );
  if (newOld) return both(newOld, 'newOld');
  const bare = find(lexed, /^ (?:is |can |use )?F for (?:[a-z]+ )?F /);
  if (bare) return both(bare, 'newOld');
  const oldNew = find(
    lexed,
    / (?:swap|replace|switch|trade|sub|substitute|change|swapping|replacing) (?:[a-z]+ ){0,2}(?:Q )?(?:of )?(?:F|M|Y|A) (?:out )?(?:(?:in|of|from) (?:the |our )?(?:R|P) )?(?:with|for|to|by|into) (?:[a-z]+ )?(?:Q )?(?:F|Y) /,
  );
  if (oldNew) return both(oldNew, 'oldNew');
  const stands = find(
    lexed,
    / F (?:[a-z]+ )?(?:replace|replaces|stand in for|sub for|work for) (?:the )?(?:F|M|A|Y) /,
  );
  if (stands) return both(stands, 'newOld');
  const given = find(lexed, / (?:swap|replace|switch) (?:[a-z]+ )?(?:Q )?(?:of )?F (?:[a-z]+ )?F /);
  if (given && lexed.said.includes(' with ')) return both(given, 'oldNew');
  const fresh = find(lexed, / F instead (?:of (?:the )?(?:regular|usual|normal|fresh|plain|ours|it) )?/);
  if (fresh && all(lexed, 'F').length === 1) return { replacement: nameOf(fresh[0] as Atom) };
  const changed = find(lexed, /^ F (?:to|into) F (?:in (?:the )?(?:R|P) |ok |okay |fine |good |\? |$)/);
  if (changed) return both(changed, 'oldNew');
  const strange = strangeAfter(lexed);
  if (strange !== undefined) return { ingredient: strange };
  const use = find(lexed, /^ can (?:i|we|u|you) use (?:[a-z]+ )?F \??/)?.find((atom) => atom.sym === 'F');
  if (use && all(lexed, 'F').length === 1) return { replacement: nameOf(use) };
  const foods = all(lexed, 'F');
  const [lacking, standIn] = foods;
  if (lacking && standIn && foods.length === 2 && LACKS.test(lexed.shape))
    return { ingredient: nameOf(lacking), replacement: nameOf(standIn) };
  const said = ingredient(lexed);
  if (said.ingredient !== undefined) return said;
  const shelf = all(lexed, 'A').find((atom) => atom.id !== undefined && !/ free | allerg/.test(lexed.said));
  const noun = shelf ?? all(lexed, 'V')[0];
  return noun ? { ingredient: nameOf(noun) } : {};
}

const NO_THING = /^(?:this|that|them|these|those|something|anything|tomorrow|today|now)$/;

/** "substitute for the oyster sauce": a thing on no shelf here is named as it was typed. */
function strangeAfter({ seen }: Lexed): string | undefined {
  const at = seen.findIndex(
    ({ sym }, i) =>
      sym === 'for' && /^(?:sub|substitute|alternative|replacement|swap)$/.test(seen[i - 1]?.sym ?? ''),
  );
  if (at < 0) return undefined;
  const from = /^(?:the|a|our)$/.test(seen[at + 1]?.sym ?? '') ? at + 2 : at + 1;
  if (!/^[a-z]{4,}$/.test(seen[from]?.sym ?? '') || NO_THING.test(seen[from]?.sym ?? '')) return undefined;
  const end =
    seen[from + 1] && /^(?:unknown|[a-z]{4,}|F)$/.test(seen[from + 1]?.sym ?? '') ? from + 2 : from + 1;
  return seen
    .slice(from, end)
    .map(({ text }) => text)
    .join(' ');
}

function both(atoms: readonly Atom[], order: 'newOld' | 'oldNew'): Slots {
  const things = atoms.filter((atom) => /^[FMYA]$/.test(atom.sym));
  const [one, two] = [things[0], things.at(-1)];
  if (!one || !two || one === two) return {};
  const [old, fresh] = order === 'newOld' ? [two, one] : [one, two];
  return { ingredient: old.sym === 'M' ? 'sugar' : nameOf(old), replacement: nameOf(fresh) };
}
