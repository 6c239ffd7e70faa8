import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { first } from '../slots/find.ts';
import { avoid, batch, ingredient, location, recipe } from '../slots/names.ts';
import { amount, bareUnit, quantity } from '../slots/numbers.ts';
import { madeWhen, when } from '../slots/when.ts';
import { DELIVERY, delivery, isDelivery } from './delivery.ts';

/** What was made, served and wasted in a week. */
const WEEK =
  / (?:week|weekly|W) (?:summary|report|recap|review) | (?:summary|report|recap) (?:of |for )?(?:[a-z]+ )?(?:week|W) | what (?:[a-z]+ )*(?:happened|wasted?|tossed|made|make|served?) (?:[a-z]+ )*W /;

/** The answer to "how much came?". */
const ONLY_AMOUNT = /^ (?:about |around |it was |just |only )*Q (?:of it |of them )?$/;
/** "how much oats left": a food, not a dish. */
const FOOD_LEFT = / how much (?:[a-z]+ )*F (?:[a-zL]+ )*(?:left|have|hand|L|remaining|there) /;

export const stock: IntentReader = {
  intent: 'stock',
  cues: [
    'stock',
    'inventory',
    'left',
    'have',
    'L',
    'expire',
    'expires',
    'expired',
    'expiring',
    'use',
    'used',
    'needs',
    'enough',
    'low',
    'available',
    'keep',
    'last',
    'still',
    'who',
    'shelf',
    'good',
    'remaining',
    'hand',
    'first',
    'batch',
    'many',
    'thrown',
    'setting',
    'set',
    'throw',
    'toss',
    'discard',
    'trash',
    'week',
    'weekly',
    'summary',
    'recap',
    'wasted',
    'waste',
    'happened',
    'received',
    'bought',
    'restocked',
    'delivered',
    'got',
    'arrived',
    'came',
    'past',
    'par',
    'below',
    'oldest',
    'covered',
    'run',
    'out',
    'old',
    'there',
    'remains',
    'until',
    'till',
    'count',
    'details',
    'made',
    'grab',
    'hand',
  ],
  rules: [
    ...DELIVERY.map((pattern): [RegExp, number] => [pattern, 9.4]),
    [FOOD_LEFT, 8.5],
    [/^ (?:the )?L \?? ?$/, 6],
    [
      /^(?!.* (?:toss|tossed|discard|discarded|throw|threw|dump|dumped|trash|trashed|bin|binned) ).* past (?:its |their |the )?(?:dates?|F|use by|prime) /,
      8.3,
    ],
    [/ how old (?:is|are) (?:[a-zL]+ )*(?:R|P|F) /, 8],
    [
      / (?:is|are) there (?:still |at least |about |already )?N (?:[a-z]+ )?(?:A )?(?:R|P) (?!in (?:a|each|one|every))/,
      9.2,
    ],
    [/ how many remains? /, 8],
    [/ (?:we|are we) (?:good|set|ok|okay|covered|fine) (?:on|for) (?:the )?(?:A )?(?:R|P) /, 8.6],
    [/ oldest (?:[a-zRP]+ ){0,4}(?:first|out) | (?:what|which) (?:[a-zRP]+ )*oldest /, 8],
    [/ (?:did|have|are) (?:we|you) (?:run |ran |running |all )?out of (?:the )?(?:R|P) /, 8.4],
    [/ (?:until|till) (?:when|which day|what day|what date) /, 8],
    [/^ (?:the |our )?(?:[a-z]+ |P |L |R )?count (?:pls|please|now|rn|\?)? ?$/, 7.4],
    [
      / (?:which|what) (?:[a-zRP]+ )*(?:grab|use|pull|serve|take|eat|go|put out|hand out|open) (?:[a-z]+ ){0,2}first /,
      9.3,
    ],
    [/ (?:what|whats|everything|anything|list|which) (?:[a-z]+ ){0,5}(?:on hand|in stock) /, 7.6],
    [/ (?:any|what|whats|which|how many) (?:[a-z]+ )*A (?:[a-zRP]+ )*(?:left|on hand|available) /, 8.8],
    [/ (?:details|info|information|history|story) (?:of|on|about|for) (?:[a-z]+ )*(?:R|batch|P) /, 7.8],
    [
      /^ (?:[a-z]+ )?(?:do|did|have|will|are) (?:we|you|u|i|they) (?:still |even )?(?:have|has|had|got|get) (?:enough |about |at least )?N (?:[a-z]+ )?(?:A )?(?:R|P) /,
      9.2,
    ],

    [/ (?:stock|inventory) /, 6.5],
    [/^ (?:[a-z]+ ){0,2}(?:stock|inventory) (?:[a-z]+ ){0,2}\?? ?$/, 7],
    [
      / how (?:many|much) (?:[a-zRPFA]+ ){0,6}(?:left|remaining|remain|available|on hand|still|do we have|we have|have we|we got|are there|in stock|in L|there) /,
      8,
    ],
    [/ how (?:many|much) (?:[a-z]+ ){0,2}left /, 8],
    [/ how (?:many|much) .*L /, 7],
    [
      / (?:any|is there|are there|do we have|have we got|we got|got any) (?:(?!else |other |smth |something |substitute |instead )[a-z]+ )*(?:A )?(?:R|P|F) (?:[a-z]+ )*(?:left|in L|there|available)? ?/,
      5.6,
    ],
    [/ do (?:we|you|u) (?:still )?have (?:[a-z]+ )*(?:A )?(?:R|P) /, 6.7],
    [
      / (?:whats|what is|what are|what|anything|everything|show) (?:[a-z]+ )*(?:in|left in|inside) (?:[a-z]+ )?L /,
      7.6,
    ],
    [/ (?:whats|what is|what do we have|anything|what) (?:[a-z]+ )?(?:left|available|there) /, 6.5],
    [/ (?:expire|expires|expiring|expired|expiry|expiration|going bad|go bad|out of date) /, 7],
    [/ use by /, 7.5],
    [/ (?:needs?|has|have|must|should|gotta) (?:to )?be (?:used|eaten|served|tossed|thrown|gone) /, 7.4],
    [/ (?:use|eat|serve|go|goes|pull) (?:[a-z]+ )?first /, 7.5],
    [/ (?:how long|shelf life) (?:[a-z]+ )*(?:R|P|F|it|they|these|keep|last|good) /, 7],
    [/ shelf life /, 8],
    [/ how long (?:[a-zRPF]+ )*(?:keep|last|good|stay) /, 8],
    [/ enough (?:[a-z]+ )*(?:R|P|F) (?:for|left|to) /, 8],
    [/ enough for /, 6.5],
    [/ (?:running|are we|were|we|what) (?:[a-z]+ )*low (?:on )?/, 8.2],
    [/ (?:below|under) par /, 8],
    [/ who (?:made|baked|did|prepped) (?!.* W )/, 7.5],
    [/ (?:R|P|F|they|these|it) (?:[a-zW]+ )*still (?:good|ok|okay|fine|usable) /, 7.6],
    [/ (?:are|is) (?:[a-z]+ )*(?:R|P) (?:from|made) (?:[a-z]+ )?W /, 7],
    [/ (?:P|R) (?:are |we )?left \?? ?/, 6.6],
    [/ (?:P|R) (?:do )?we have /, 6.5],
    [/ (?:where|which) (?:[a-z]+ )*(?:R|P) .*(?:L|shelf|fridge|kept|stored)? ?/, 3],
    [
      / when (?:was|were|did) (?:[a-zL]+ )*(?:R|P) (?:[a-zL]+ )*(?:made|make) | when (?:was|were) (?:R|P) .*made /,
      7.9,
    ],
    [/ batch (?:info|code|number|[a-z]+ )*/, 2],
    [/ (?:need|must|have) to be (?:thrown|tossed) /, 6],
    [/ (?:what|which) .*(?:L) /, 4],
    [/ in L \? /, 5],
    [
      / (?:must|should|has|have|needs?|to|can|gotta) (?:[a-z]+ ){0,3}(?:thrown|throw|toss|tossed|discard|discarded|trash|binned|dump) /,
      8.6,
    ],
    [WEEK, 8.8],
    [/ (?:anything|what|whats|which|are|is) (?:[a-zRP]+ )*(?:still setting|setting|set yet|not set) /, 7.2],
    [/^ how many (?:R|P) \?? ?$/, 5.5],
    [/ do we have (?:[a-z]+ )*(?:left|available|on hand) /, 7],
  ],
  slots(lexed) {
    if (isDelivery(lexed)) return delivery(lexed);
    if (ONLY_AMOUNT.test(lexed.shape)) return amount(lexed);
    if (FOOD_LEFT.test(lexed.shape) && !lexed.syms.has('R'))
      return { ...ingredient(lexed), ...location(lexed) };
    const asked = ask(lexed);
    const made =
      / (?:made|from|baked) (?:[a-z]+ )?W | W (?:batch of )?(?:R|P) /.test(lexed.shape) ||
      asked.ask === 'batch_info';
    return {
      ...bareUnit(lexed),
      ...dishMeant(lexed),
      ...batch(lexed),
      ...location(lexed),
      ...filter(lexed),
      ...(made ? madeWhen(lexed) : when(lexed)),
      ...avoid(lexed),
      ...asked,
      ...quantity(lexed),
    };
  },
};

function filter({ shape }: Lexed): Slots {
  if (
    / (?:expired|past (?:its |their |the )?(?:dates?|F|use by|prime)|out of date|too old|thrown|throw|toss|tossed|discard|discarded) /.test(
      shape,
    )
  )
    return { filter: 'expired' };
  if (/ (?:needs?|has|have|must|should|gotta) (?:to )?be (?:used|eaten|served|gone|finished) /.test(shape))
    return { filter: 'expiring' };
  if (/ (?:expire|expires|expiring|go bad|going bad) /.test(shape) && !/ when /.test(shape))
    return { filter: 'expiring' };
  if (/ (?:low|par) /.test(shape)) return { filter: 'low' };
  return {};
}

/** "nut free bars left" asks for whatever is nut free, even where one recipe is nicknamed so. */
function dishMeant(lexed: Lexed): Slots {
  const dish = first(lexed, 'R');
  if (!dish?.needs) return recipe(lexed);
  return dish.unit === undefined ? {} : { unit: dish.unit };
}

function ask({ shape }: Lexed): Slots {
  if (/ first | oldest /.test(shape)) return { ask: 'first_out' };
  if (WEEK.test(shape)) return { ask: 'week' };
  if (/ use by | when .*expire|still (?:good|ok|okay|fine|usable) /.test(shape)) return { ask: 'use_by' };
  if (/ (?:until|till) (?:when|which day|what day|what date) /.test(shape))
    return { ask: / made | W /.test(shape) ? 'use_by' : 'shelf_life' };
  if (/ shelf life | how long | how many (?:days|weeks) /.test(shape)) return { ask: 'shelf_life' };
  if (
    / enough | (?:good|set|covered) (?:on|for) (?:the )?(?:A )?(?:R|P) | (?:is|are) there (?:still |at least |about |already )?N | (?:do|did|have|will) (?:we|you|u|i|they) (?:still |even )?(?:have|has|had|got|get) (?:about |at least )?N /.test(
      shape,
    )
  )
    return { ask: 'enough' };
  if (/ how old | (?:details|info|information|history|story) (?:of|on|about|for) /.test(shape))
    return { ask: 'batch_info' };
  if (/ who (?:made|baked|did|prepped) | when (?:was|were) /.test(shape)) return { ask: 'batch_info' };
  return {};
}
