import type { Slots } from '../../slots.ts';
import type { IntentReader, Rule } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, first } from '../slots/find.ts';
import {
  CHANGED,
  CHECKED,
  isStatement,
  labeledProduct,
  namedBeforeMay,
  TOLD_NOW,
  tellsChange,
  tellsLoss,
} from '../slots/label-told.ts';
import { ingredient, nameOf, needsOf, recipe } from '../slots/names.ts';
import { when } from '../slots/when.ts';

export const allergens: IntentReader = {
  intent: 'allergens',
  cues: [
    'A',
    'V',
    'F',
    'allergen',
    'allergens',
    'allergy',
    'allergies',
    'allergic',
    'traces',
    'trace',
    'eat',
    'have',
    'contain',
    'contains',
    'contamination',
    'brand',
    'allowed',
    'safe',
    'same',
    'label',
    'recheck',
    'swapped',
    'now',
    'changed',
    'substituted',
    'subbed',
  ],
  rules: [
    [
      / (?:is|are) there (?:any )?(?:V|A|F) in (?:any|which|what|all) (?:[a-z]+ )?(?:recipes?|R|P|snacks?) /,
      8.9,
    ],
    [/^ who (?:all )?A \?? ?$/, 8],
    [
      /^ (?:is |are |any |anything )?(?:there |with )?(?:V|A|F) (?:or (?:V|A|F) )?in (?:anything|F|L|any|the) /,
      7,
    ],
    [/ anything with (?:V|A) | anything with F (?:W|in L|in stock) /, 7.4],
    [/ (?:whats|what is|what) (?:[a-z]+ )*in (?:[a-z]+ )*R (?:[a-z]+ )*(?:A|V) (?:\? )?$/, 7.6],
    [/ (?:can|could|may|should) (?:[a-z]+ )*(?:R|P|F) be (?:[a-z]+ )?eaten by .*(?:A|V) /, 9],
    [/^ A R (?:yes or no|ok|okay|yes|y n) (?:\? )?$/, 7.4],
    [/ (?:roster|count|number) .*A /, 7],
    [/ (?:recheck|check again) (?:[a-z]+ )?(?:R|P) /, 7.4],
    [/ what (?:[a-z]+ )*in (?:[a-z]+ )?L .*A .*(?:have|eat) /, 8.6],
    [/ (?:V|F) in (?:the |our |your |this |these |those |my )?(?:R|P) /, 6.6],
    [/ (?:V|F|A|allergy|allergic) \? (?:R|P) (?:\? )?$/, 7],
    [/ (?:which|what|any|show|list) (?:[a-z]+ )*recipes? (?:[a-z]+ )*(?:A|V) /, 8.6],
    [/ (?:F|V) .*(?:which|what) (?:R |P )?can (?:he|she|they|i|we|P) (?:have|eat) /, 8.6],
    [
      / (?:is|are) (?:it|this|that|these|they|the R|the P|R|P) (?:[a-z]+ )?(?:safe|good) (?:for me |now |to eat )?\?? ?$/,
      5.8,
    ],
    [/^ (?:A |V )+(?:allergy |allergies |options? |snacks? |friendly |only |P )*\?? ?$/, 6.2],
    [
      / (?:P|snacks?|options?|anything|something) (?:without|with no|minus|thats|that are) (?:V|A|F) | A (?:P|snacks?|options?|food|foods|stuff|things) /,
      6.8,
    ],
    [/ (?:and )?(?:for )?(?:my|a|our|the) (?:[a-z]+ )?(?:P )?A $/, 5.8],
    [/ same (?:table|board|pan|mixer|knife|counter|equipment|line) /, 8.6],
    [
      / (?:does|do|has|have|is) (?:the )?(?:F|Y|R) (?:have|has|contain|contains|free of|got)? ?(?:[a-z]+ ){0,2}(?:V|A|F) /,
      7.2,
    ],

    [/ (?:allergens?|allergy|allergies|allergic) /, 7],
    [/ (?:does|do|is|are|has|have|got|any|contain|contains|there) (?:[a-zRPLWN]+ ){0,6}(?:V|A) /, 6.4],
    [/ (?:is|are|r) (?:[a-z]+ ){0,3}(?:[RPFY] )?(?:[a-z]+ )?(?:A) /, 7.4],
    [
      / (?:does|do|has|is there|are there|any) (?:[a-zRP]+ ){0,5}F in (?:[a-z]+ )?(?:R|P|it|them|this|these|that) /,
      7,
    ],
    [
      / (?:does|do) (?:[a-z]+ )?(?:R|it|P|they|these|this) (?:have|contain|has|got) (?:[a-z]+ )?(?:F|V) /,
      7.5,
    ],
    [/ L (?:[a-z]+ )*(?:is|are|has|have|without|thats|with) (?:[a-z]+ )?(?:A|V) /, 8],
    [/ (?:contain|contains|containing|free of|free from) /, 6.2],
    [/ (?:traces?|may contain|cross contact|cross contamination|shared|facility|contamination) /, 6.5],
    [/ can (?:[a-z]+ ){1,4}(?:eat|have) (?:[a-z]+ ){0,3}(?:R|P|this|these|it|those|them) /, 6.6],
    [/ can (?:[a-z]+ ){1,2}(?:eat|have) (?:[a-z]+ ){0,2}F (?:F |[a-z]+ )*\?? ?$/, 5.6],
    [/ can (?:[a-z]+ ){1,2}(?:eat|have) .*(?:A|V allergy|V allergies) /, 7.2],
    [/ can (?:[a-z]+ )?(?:A|P|K|S) (?:P )?(?:[a-z]+ )?(?:eat|have) /, 6.8],
    [/ what can (?:[a-z]+ )*(?:A|someone|P) .*(?:eat|have) /, 7.4],
    [/ (?:which|what|any|show|list) (?:[a-zPRLW]+ ){0,5}(?:A|V) /, 6.6],
    [/ A .*(?:ok|okay|safe|fine|good|eat|have) /, 6.6],
    [/ (?:ok|okay|safe|fine) (?:[a-z]+ )*(?:for|with) (?:[a-z]+ )*(?:A|V) /, 7.6],
    [/^ (?:A )+\? $/, 5.6],
    [/ for (?:[a-z]+ )*(?:with|who) (?:[a-z]+ )*A /, 7],
    [CHANGED, 7],
    [CHECKED, 9.4],
    ...TOLD_NOW.map((told): Rule => [told, 9.2]),
    [/ (?:cant|cannot) (?:have|eat) (?:[a-z]+ )*(?:R|P) /, 7],
    [/ (?:A|V) \? $/, 5.2],
    [/ (?:R|P) (?:[a-z]+ )?A \? /, 6.6],
    [/ is (?:[a-z]+ )?(?:R|F|Y) (?:[a-z]+ )?(?:A|V) /, 7],
    [/ (?:safe|ok) (?:to eat )?(?:for|if) /, 4],
    [/ (?:R|P) .*(?:im|i am|has|have) (?:[a-z]+ )?A /, 7],
  ],
  slots: (lexed) => ({
    ...subject(lexed),
    ...(isStatement(lexed) && labeledProduct(lexed) ? {} : recipe(lexed)),
    ...scope(lexed),
    ...when(lexed),
    ...(/ (?:traces?|may contains?|cross contact|cross contamination|shared|facility|contamination) /.test(
      lexed.shape,
    )
      ? { may_contain: true }
      : {}),
    ...(CHECKED.test(lexed.shape)
      ? { checked_label: true }
      : tellsChange(lexed)
        ? { changed_product: true }
        : {}),
    ...(/ (?:label|list|card|sign|sheet) /.test(lexed.shape)
      ? { output: / label /.test(lexed.shape) ? 'label' : 'list' }
      : {}),
  }),
};

/** What is avoided, and the food it is about; of a label that is told of, the product and what is on it. */
function subject(lexed: Lexed): Slots {
  if (!CHECKED.test(lexed.shape) && !tellsChange(lexed))
    return { ...avoided(lexed), ...(onlyNeeds(lexed) ? {} : ingredient(lexed)) };
  const product = labeledProduct(lexed);
  const told = tellsLoss(lexed) ? [] : lexed.seen.filter(({ sym }) => /^[AVF]$/.test(sym));
  const before = new Set(tellsLoss(lexed) ? [] : namedBeforeMay(lexed, product));
  const onIt = needsOf(told.filter((atom) => atom !== product && !before.has(atom)));
  const contained = needsOf([...before]);
  return {
    ...(onIt.length > 0 ? { avoid: onIt } : {}),
    ...(contained.length > 0 ? { label_contains: contained } : {}),
    ...(product ? { ingredient: nameOf(product) } : isStatement(lexed) ? { told: true } : ingredient(lexed)),
  };
}

/** Every need and allergen named; a food that is an allergen counts when it is asked for in something. */
function avoided(lexed: Lexed): Slots {
  const named = all(lexed, 'R').filter((atom) => atom.needs !== undefined);
  const stated = [...all(lexed, 'A'), ...all(lexed, 'V'), ...named];
  const asked = all(lexed, 'F').filter(
    (atom) => atom.needs !== undefined && (stated.length === 0 || lexed.syms.has('R')),
  );
  const subject = stated.length > 0 && all(lexed, 'F').length === 1 && !lexed.syms.has('R') ? [] : asked;
  const needs = needsOf([...stated, ...subject]);
  return needs.length > 0 ? { avoid: needs } : {};
}

/** In "is there egg in the muffins" egg is what is avoided, not what is asked about. */
const onlyNeeds = (lexed: Lexed): boolean => {
  const food = first(lexed, 'F');
  return food === undefined || (food.needs !== undefined && !lexed.syms.has('A') && !lexed.syms.has('V'));
};

function scope(lexed: Lexed): Slots {
  const { shape } = lexed;
  if (lexed.syms.has('K') || / (?:roster|team|who|whose|anyone|anybody) /.test(shape))
    return lexed.syms.has('K') && lexed.syms.has('R') ? {} : { scope: 'roster' };
  if (lexed.syms.has('L') || / (?:stock|left|available|on hand) /.test(shape)) return { scope: 'all_stock' };
  if (/ (?:this|next|the|weeks?) (?:weeks? )?(?:menu|week) /.test(lexed.said)) return { scope: 'week' };
  if (/ W /.test(shape) && / (?:everything|anything|all|week|menu) /.test(` ${shape} ${lexed.said} `))
    return { scope: 'week' };
  if (
    !lexed.syms.has('R') &&
    / (?:which|what|everything|all|any|list|show|options?) (?:[a-z]+ ){0,3}(?:P|recipes?|snacks?|do|can|is|are|options?|A|everything) | A (?:recipes?|options?|snacks?|P|food|foods|things|stuff) |^ (?:A |V )+only ?\?? ?$| (?:P|snacks?) (?:without|with no|minus|thats|that are) (?:A|V|F) /.test(
      shape,
    )
  )
    return { scope: 'all_recipes' };
  return {};
}
