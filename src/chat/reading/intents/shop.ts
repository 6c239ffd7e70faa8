import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, first, lastIn } from '../slots/find.ts';
import { avoid, ingredient, knownRecipe, nameOf, needsOf, opponent, recipe } from '../slots/names.ts';
import { amount, factor, numberOf, quantity } from '../slots/numbers.ts';
import { when } from '../slots/when.ts';
import { listEntries } from './list-entries.ts';
import { plan } from './plan.ts';

/** The list itself: read, changed, emptied. */
const THE_LIST = '(?:the |our |my )?(?:shopping |order |grocery |groceries )?list';
const CLEAR = new RegExp(
  ` (?:clear|empty|wipe|reset|start over) (?:out |off )?${THE_LIST} | (?:remove|delete|take|cross) (?:everything|all|it all) (?:off|from) (?:of )?${THE_LIST} `,
);
/** "out of honey" of the shop, not of the kitchen: what is asked is what to buy instead. */
const OUT =
  / (?:out of|no|without|doesnt have|dont have|does not have|do not have|ran out of|sold out of) (?:any |the |more )?F /g;

const OFF =
  / (?:remove|delete|drop|take|took|scratch|cross|crossed|removed) (?:[a-zFQNMYPR]+ )*(?:off|from|list) | (?:remove|delete) /;
/** Put on it; "need to buy 2 lb honey" asks for the same. */
const ON =
  / (?:add|put|need more|also) |^ (?:pls |please )?order (?:[a-z]+ )*(?:Q |N )?(?:of )?F |^ (?:we |i |you |pls |please |remember |dont forget |do not forget )*(?:(?:need|have) to |must |should |to )?(?:buy|get|purchase|reorder|restock) (?:some |more |the |a |an )*(?:Q |N )?(?:of )?(?:the )?(?:F|Y)(?: and (?:Q |N )?(?:of )?F)* (?:pls |please )?$/;

export const shop: IntentReader = {
  intent: 'shop',
  cues: [
    'shopping',
    'shop',
    'buy',
    'order',
    'grocery',
    'groceries',
    'list',
    'purchase',
    'ordering',
    'buying',
    'restock',
    'get',
    'reorder',
    'need',
  ],
  rules: [
    [
      / (?:remove|drop|cross|scratch|take) (?:off )?(?:the )?F (?:from|off) (?:of )?(?:the |our )?(?:order|list) /,
      9,
    ],
    [new RegExp(`^ (?:show |see |view |read |open |whats on )?(?:me |us )?${THE_LIST} \\?? ?$`), 7],
    [CLEAR, 9],
    [/ (?:price|cost|total|sum) (?:of|for) (?:the |our )?(?:shopping |order |grocery )?list /, 9.2],
    [/^ what (?:else )?do (?:we|i) (?:still )?need for (?:the )?(?:W|game|[a-z]+ game) /, 6.6],
    [/ (?:shopping|grocery|groceries|shop) /, 8],
    [/^ (?:[a-z]+ ){0,4}(?:shopping|grocery|groceries|shop) (?:list )?for /, 8.6],
    [/ (?:buy|buying|purchase|restock|reorder) /, 7.5],
    [/ order list /, 8.5],
    [/ (?:on|to|in) (?:the |our |next |mon )*order /, 7.6],
    [/ (?:to|on|off|from|onto) (?:the |our |my )?(?:shopping |order |grocery )?list /, 8],
    [/ (?:add|put) (?:[a-z]+ ){0,2}(?:Q |N )?(?:of )?(?:F|M|Y) (?:and F )*(?:to|on) /, 8],
    [/ (?:what|how much|how many) (?:[a-z]+ )*(?:U )?(?:of )?(?:[a-zF]+ )*(?:order|buy|get from) /, 8],
    [/^ (?:pls |please )?order (?:[a-z]+ )*(?:Q |N )?(?:of )?(?:F|M|Y) /, 7.5],
    [/ (?:need|have) to (?:order|buy|get) /, 7.5],
    [/ list for (?:W|N|game|[a-z]+ game) /, 5.5],
  ],
  slots(lexed) {
    const doing = action(lexed);
    if (doing.action === 'clear') return doing;
    if (doing.action !== undefined) return { ...doing, ...changed(lexed), ...when(lexed) };
    const gone = out(lexed);
    return {
      ...doing,
      ...(isForPeople(lexed) ? plan.slots(lexed) : dishes(lexed)),
      ...(Object.keys(gone).length === 0 ? { ...ingredient(lexed), ...amount(lexed) } : gone),
      ...extra(lexed),
      ...when(lexed),
    };
  },
};

function action({ shape }: Lexed): Slots {
  if (CLEAR.test(shape)) return { action: 'clear' };
  if (/^ (?:is|are|was|who|when|did|does|do|has|have|whats|what|why|how|which) /.test(shape)) return {};
  if (OFF.test(shape)) return { action: 'remove' };
  return ON.test(shape) ? { action: 'add' } : {};
}

/** What goes on the list or off it: dishes with a count as batches, foods, else the words. */
function changed(lexed: Lexed): Slots {
  const counted = / (?:N|B) (?:A )?R /.test(lexed.shape);
  if (counted) return dishes(lexed);
  const entries = listEntries(lexed);
  const [only] = entries;
  const isOneFood = entries.length === 1 && only?.item === undefined && only?.unclear === undefined;
  return {
    ...(only?.ingredient === undefined ? {} : { ingredient: only.ingredient }),
    ...(only?.amount === undefined ? {} : { amount: only.amount, amount_unit: only.amount_unit }),
    ...(entries.length === 0 || isOneFood ? {} : { items: entries as readonly SlotValue[] }),
  };
}

/** "40 oat bars", "2 batches of oat bars and 24 bites", "44 travelling": what is made of it. */
function dishes(lexed: Lexed): Slots {
  const parts = partsOf(lexed);
  if (parts.length > 1) {
    const last = lexed.seen.findLastIndex(({ sym }) => sym === 'R');
    const ofAll = needsOf(lexed.seen.slice(last + 1).filter(({ sym }) => sym === 'A'));
    return { parts, ...(ofAll.length > 0 ? { avoid: ofAll } : {}) };
  }
  const numbers = all(lexed, 'N');
  // Two numbers for one dish are no number anybody can be sure of: it is asked which.
  const count = numbers.length > 1 ? { quantities: numbers.map(numberOf) } : quantity(lexed);
  return { ...count, ...factor(lexed), ...dishOrGame(lexed), ...avoid(lexed) };
}

/** "for saturday 44 travelling, 5 nut free": people of a day, counted as for a plan. */
const isForPeople = (lexed: Lexed): boolean =>
  lexed.syms.has('N') &&
  !lexed.syms.has('R') &&
  (needsOf(all(lexed, 'A')).length > 0 ||
    / (?:W|game) (?:[a-z]+ )*N (?!P) ?|N (?:travelling|traveling|people) /.test(lexed.shape));

function partsOf({ seen }: Lexed): SlotValue[] {
  const found: SlotValue[] = [];
  seen.forEach((atom, i) => {
    const at = [i + 1, i + 2].find(
      (k) => seen[k]?.sym === 'R' && (k === i + 1 || /^(?:of|A)$/.test(seen[i + 1]?.sym ?? '')),
    );
    const dish = at === undefined ? undefined : seen[at];
    if (!dish || (atom.sym !== 'N' && atom.sym !== 'B')) return;
    const avoided = needsOf([...seen.slice(i, at), dish]);
    found.push({
      ...sizeOf(atom, dish),
      recipe: nameOf(dish),
      ...(avoided.length > 0 ? { avoid: avoided } : {}),
    });
  });
  return found;
}

const sizeOf = (atom: Atom, dish: Atom): { [name: string]: SlotValue } =>
  atom.sym === 'B'
    ? { factor: numberOf(atom) }
    : { quantity: numberOf(atom), ...(dish.unit === undefined ? {} : { unit: dish.unit }) };

/** "for the riverton game": a strange word before "game" is whom it is against, no dish. */
function dishOrGame(lexed: Lexed): Slots {
  const known = knownRecipe(lexed);
  if (known.recipe !== undefined) return known;
  const whom = opponent(lexed);
  if (whom.opponent !== undefined) return whom;
  const at = lexed.seen.findIndex(({ sym }) => sym === 'game' || sym === 'match');
  const before = lexed.seen[at - 1];
  if (at > 0) return before?.unknown ? { opponent: before.word } : {};
  return recipe(lexed);
}

/** Foods the shop lacks; "without peanuts" says what somebody avoids, and of people it never means the shop. */
function out(lexed: Lexed): Slots {
  const isShop = / (?:out|have) (?:of )?/.test(lexed.shape);
  if ((isForPeople(lexed) && !isShop) || [...lexed.shape.matchAll(OUT)].length === 0) return {};
  const foods = all(lexed, 'F');
  const avoided = isShop ? [] : needsOf(foods);
  if (avoided.length > 0) return { avoid: [...new Set([...avoided, ...needsOf(all(lexed, 'A'))])] };
  return foods.length > 0 ? { out: foods.map(nameOf) } : {};
}

/** "10 % extra", "plus 10%". */
function extra(lexed: Lexed): Slots {
  if (!lexed.syms.has('G')) return {};
  const share = lastIn(lexed, / (?:plus|extra|spare|and|with) (?:[a-z]+ )?G /, 'G') ?? first(lexed, 'G');
  return share ? { extra_pct: numberOf(share) } : {};
}
