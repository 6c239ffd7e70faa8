import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';

/** What came is not what was read about. */
export const CHANGED =
  / (?:new|different|changed|another|switched|swapped|other) (?:[a-z]+ )?(?:brand|brands|supplier|vendor|product|label|formula|recipe from|version of F|ingredients list) | (?:sent|send|delivered|got|bought|came|subbed|substituted|gave|ordered|using) (?:[a-z]+ )?(?:a |the |some )?(?:different|new|another|other) (?:F|R|Y|P|brand|kind|one|ones|M) | (?:label|formula|packaging|ingredients?) (?:has |have |was |were |is |are )?(?:changed|different|new) | (?:supplier|vendor|store|they) (?:[a-z]+ )?(?:swapped|changed|switched|replaced) (?:out )?(?:the |our )?(?:F|Y) | new (?:F|Y) (?:[a-z]+ ){0,2}(?:say|says|list|lists|has|have|contain|contains) | label (?:of|on) (?:the |our )?(?:F|Y) (?:[a-z]+ )?(?:changed|different|new) /;

export const CHECKED = / (?:checked|confirmed|read) (?:[a-z]+ ){0,2}labels? (?:of|on) /;

const SAYING =
  '(?:contain|contains|has|have|list|lists|say|says|include|includes|name|names|warn|warns|show|shows)';
const ASKED =
  '(?!.* (?:\\?|if|whether|what|which|who|whose|how|when|why) )(?! (?:ok |so |hey |and )*(?:is|are|was|does|do|did|can|could|may|should|would|will|has|have|any) )';

/** "Sunflower butter now contains almonds", "the granola changed": told, and never a question. */
export const TOLD_NOW: readonly RegExp[] = [
  ` (?:F|Y|R) (?:[a-z]+ ){0,3}now (?:also |may |might |it |they )*${SAYING} `,
  ` now (?:the |our )*(?:F|Y|R) (?:also |may |might )*${SAYING} `,
  ` (?:F|Y|R) (?:[a-z]+ ){0,3}${SAYING} (?:[a-z]+ ){0,4}(?:V|F|A) (?:[a-zFVA]+ ){0,4}now $`,
  ` labels? (?:of|on|for|from) (?:the |our |this |that |these |new )*(?:F|Y) (?:[a-z]+ ){0,3}${SAYING} `,
  ` (?:F|Y) labels? (?:[a-z]+ ){0,2}(?:${SAYING}|may) `,
  ' (?:F|Y) (?:has |have |had |just |was |were |got |been )*(?:changed|reformulated) (?!(?:in )?(?:price|cost|prices|to|places?|from|hands) )',
  ' (?:substituted|subbed) (?:in |out )?(?:the |our |some |a )*(?:F|Y) $',
  ' (?:theres|there is|there are) now (?:[a-z]+ )?(?:V|F|A) in (?:the |our )*(?:F|Y|R) ',
  ' now (?:theres|there is|there are) (?:[a-z]+ )?(?:V|F|A) in (?:the |our )*(?:F|Y|R) ',
].map((told) => new RegExp(`^${ASKED}.*?${told}`));

/** Whether a message tells that a product is not what it was. */
export const tellsChange = ({ shape }: Lexed): boolean =>
  CHANGED.test(shape) || TOLD_NOW.some((told) => told.test(shape));

/** Whether what it names is told outright, so that the recipe it goes into is not what is asked about. */
export const isStatement = ({ shape }: Lexed): boolean => TOLD_NOW.some((told) => told.test(shape));

/** From here on it is what the label says. */
const SAYS =
  /^(?:contains?|containing|says?|lists?|traces?|with|now|has|have|may|includes?|names?|warns?|shows?)$/;
const PRODUCT = /^[FYV]$/;
/** What a label no longer names, or says it is without. */
const LOST =
  / (?:no longer|not|doesnt|dont|didnt) (?:[a-z]+ )?(?:contain|contains|have|has|list|lists|say|says|name|names) | (?:contains?|has|have|lists?|names?) (?:no|zero|neither) | (?:says?|now) (?:it is |its )?A | (?:free of|free from|without) /;

/** Whether the news is that an allergen went: nothing is taken off for that until staff have read the label. */
export const tellsLoss = ({ shape }: Lexed): boolean => LOST.test(shape);

/**
 * The product whose label is told of, in "peanut butter has a new label, contains soy": the first food named before what
 * the label says, else the first one; in "there is now soy in the peanut butter" the one after "in". An allergen by its
 * own name is a product here. Of a dish that is told of, no product is known.
 */
export function labeledProduct(lexed: Lexed): Atom | undefined {
  const { seen } = lexed;
  const isProduct = ({ sym }: Atom): boolean => PRODUCT.test(sym);
  const there = seen.findIndex(({ sym }) => sym === 'there' || sym === 'theres');
  const within = there < 0 ? -1 : seen.findIndex(({ sym }, i) => i > there && sym === 'in');
  if (within >= 0) return seen.slice(within).find(isProduct);
  const isNamed = (atom: Atom): boolean => isProduct(atom) || atom.sym === 'R';
  const says = seen.findIndex(({ sym }, i) => SAYS.test(sym) && seen.slice(0, i).some(isNamed));
  const named = seen.slice(0, says < 0 ? seen.length : says).find(isProduct);
  if (named) return named;
  return isStatement(lexed) && seen.some(({ sym }) => sym === 'R') ? undefined : seen.find(isProduct);
}

/** What is told as contained, where a "may contain" follows it: "contains soy, may contain milk". */
export function namedBeforeMay({ seen }: Lexed, product: Atom | undefined): readonly Atom[] {
  const may = seen.findIndex(({ sym }) => /^(?:may|traces?|shared|facility)$/.test(sym));
  const says = seen.findIndex(({ sym }) => /^(?:contains?|has|have|lists?|includes?)$/.test(sym));
  if (may < 0 || says < 0 || says > may) return [];
  return seen.slice(says, may).filter((atom) => atom !== product && /^[AVF]$/.test(atom.sym));
}
