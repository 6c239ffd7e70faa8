import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first } from '../slots/find.ts';
import { ingredient, nameOf, needsOf } from '../slots/names.ts';
import { amount, numberOf, quantity } from '../slots/numbers.ts';
import { when } from '../slots/when.ts';
import { listEntries } from './list-entries.ts';

const CAME = '(?:received|delivered|came|arrived|dropped off)';
const BEFORE = '(?:we |i |just |have |has |got |was |were |the |our |some |more |a |an |any |today )*';
const OTHER = '(?:new |different |another |other )*';
/** What may follow a food that came without an amount: when, and news of its label. */
const AFTER =
  '(?:in |today |W |now )*(?:$|(?:with |has |have |had |but |and |it |its |the |a |says |now |from |is |was )*(?:new|different|another|other|changed|label|labels|brand|lot|D|may|contains?|says?) )';

/** Told, not asked; "got 2 cups left, how many" asks as well. */
const TOLD =
  '(?! (?:did|does|do|has|have|is|are|was|were) )(?!.* (?:how|when|who|what|which|why|if|can|could|should|remind|left|too|dry|wet|sticky|allergic|reaction) )(?!.*\\? )';

/** "received 4 jars peanut butter", "50 lb oats delivered", "oats came, 50 lb", "received oats", "got oats, new label". */
export const DELIVERY: readonly RegExp[] = [
  '.* (?:received|got|bought|restocked|delivered|delivery of|picked up) (?:[a-z]+ ){0,2}(?:Q|N) (?:[a-z]+ ){0,2}(?:F|Y) ',
  ` (?:Q|N) (?:of )?${OTHER}(?:F|Y) ${BEFORE}${CAME} `,
  ` ${BEFORE}${OTHER}(?:F|Y) ${BEFORE}${CAME} (?:in |W |today )*(?:about )?(?:Q|N) `,
  ` ${BEFORE}${OTHER}(?:F|Y) ${BEFORE}${CAME} ${AFTER}`,
  ` ${BEFORE}(?:received|got|bought|restocked|got in) ${BEFORE}${OTHER}(?:F|Y) ${AFTER}`,
].map((told) => new RegExp(`^${TOLD}${told}`));

/** A label that is not as it was: the recipes that use it are checked again before anything is logged. */
const LABEL_NEWS =
  / (?:new|different|changed|another|other|updated) (?:[a-z]+ )?(?:labels?|brands?|formula|recipe|packaging|product|supplier|kind|maker|version|F|Y) | labels? (?:[a-z]+ )*(?:says?|lists?|changed|different|new|warns?|reads|contains?|has|may) | (?:says?|lists?) (?:it )?(?:now )?(?:may )?contains? | may contain | now (?:contains?|has|lists?|says?) /;
const SAME = / same (?:label|brand|labels|as|ingredients|product) | unchanged | no changes? | nothing new /;

/** Whether a message tells of food that came. */
export const isDelivery = ({ shape }: Lexed): boolean => DELIVERY.some((pattern) => pattern.test(shape));

/** What came, how much, of which lot, what was paid for each or for all of it, and what its label says differently. */
export function delivery(lexed: Lexed): Slots {
  const label = labelNews(lexed);
  const told = label.at === undefined ? lexed : upTo(lexed, label.at);
  const paid = first(told, 'C') ?? find(told, / (?:at|for|cost) N /)?.at(-1);
  const lot = first(lexed, 'D');
  const counted = amount(told).amount === undefined ? quantity(told).quantity : undefined;
  return {
    action: 'received',
    ...ingredient(told),
    ...amount(told),
    ...(counted === undefined ? {} : { amount: counted }),
    ...several(told),
    ...(lot ? { lot: lot.text } : {}),
    ...(paid ? { price: numberOf(paid) } : {}),
    ...(paid && / (?:each|per|apiece|a piece) /.test(lexed.shape) ? { per: 'each' } : {}),
    ...label.slots,
    ...when(lexed),
  };
}

/** More than one food in one message. */
function several(told: Lexed): Slots {
  if (all(told, 'F').length + all(told, 'Y').length < 2) return {};
  const entries = listEntries(told);
  return entries.length > 1 ? { items: entries as readonly SlotValue[] } : {};
}

interface LabelSaid {
  readonly slots: Slots;
  /** Where in `seen` the words about the label begin: the foods after it are what it names. */
  readonly at?: number;
}

function labelNews(lexed: Lexed): LabelSaid {
  const { seen, shape } = lexed;
  if (!LABEL_NEWS.test(shape) || SAME.test(shape)) return { slots: {} };
  const food = seen.findIndex(({ sym }) => sym === 'F' || sym === 'Y');
  const word = seen.findIndex(
    ({ sym }, i) => i > food && /^(?:labels?|says?|lists?|contains?|may|now|has)$/.test(sym),
  );
  if (word < 0) return { slots: { changed_product: true } };
  const may = seen.findIndex(({ sym }, i) => i >= word && /^(?:may|traces?|shared|facility)$/.test(sym));
  const contains = needsOf(seen.slice(word, may < 0 ? undefined : may));
  const warned = may < 0 ? [] : needsOf(seen.slice(may));
  const at = clauseStart(lexed, word);
  const whose = seen.slice(at, word).find(({ sym }) => sym === 'F' || sym === 'Y');
  return {
    at,
    slots: {
      changed_product: true,
      ...(whose ? { label_of: nameOf(whose) } : {}),
      ...(contains.length > 0 ? { label_contains: contains } : {}),
      ...(warned.length > 0 ? { label_may_contain: warned } : {}),
    },
  };
}

/** Where the clause about the label begins: after the comma before it, unless what came stands in the same clause. */
function clauseStart({ atoms, seen }: Lexed, word: number): number {
  const end = atoms.indexOf(seen[word] as Atom);
  const comma = atoms.slice(0, end).findLastIndex(({ sym }) => sym === ',' || sym === ';' || sym === '.');
  const clause = atoms.slice(comma + 1, end);
  const first = clause[0];
  const tellsWhatCame = comma < 0 || clause.some(({ sym }) => sym === 'Q' || sym === 'N');
  return tellsWhatCame || !first ? word : seen.indexOf(first);
}

/** The message without what follows: its own foods, not those a label names. */
function upTo(lexed: Lexed, at: number): Lexed {
  const seen = lexed.seen.slice(0, at);
  const last = lexed.atoms.indexOf(lexed.seen[at] as Atom);
  return {
    ...lexed,
    seen,
    atoms: lexed.atoms.slice(0, last),
    shape: ` ${seen.map(({ sym }) => sym).join(' ')} `,
    syms: new Set(seen.map(({ sym }) => sym)),
  };
}
