import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first, lastIn } from '../slots/find.ts';
import { avoid, dishes, ingredient, nameOf, recipe } from '../slots/names.ts';
import { numberOf, quantity } from '../slots/numbers.ts';
import { when } from '../slots/when.ts';

/** "oats 3.49 for 42 oz", "peanut butter is now 6.99 a jar", and money below zero, so that it can be refused. */
const TOLD =
  /^ (?:pls |please )?(?:F|M) (?:(?:is|are|cost|costs|now|at|was) )*(?:- )?(?:N|C) (?:(?:for|a|an|per|each) )*(?:Q|U|jug) /;
/** "almonds now 13.99". */
const TOLD_NOW = /^ (?:F|M) (?:(?:is|are|cost|costs) )?(?:now |at )?(?:- )?C | (?:F|M) (?:is |are )?now N $/;

export const cost: IntentReader = {
  intent: 'cost',
  cues: [
    'C',
    'cost',
    'costs',
    'price',
    'prices',
    'priced',
    'cheaper',
    'cheapest',
    'budget',
    'expensive',
    'dollars',
    'money',
    'spend',
    'spent',
    'bucks',
    'pay',
    'paid',
    'worth',
    'went',
    'jumped',
    'rose',
    'dropped',
    'Q',
    'now',
    'run',
    'spending',
  ],
  rules: [
    [TOLD, 9],
    [TOLD_NOW, 8.5],
    [/^ how much (?:do|does|is|are|for) (?:a |the )?(?:Q |U )(?:of )?(?:F|M) (?:cost|costs) /, 9.3],
    [/ (?:cost|costs|price|prices|priced|pricing) /, 8],
    [/ (?:cheaper|cheapest|expensive|budget|afford) /, 8],
    [/ (?:F|M|Y) (?:[a-z]+ )*(?:are|is|now|went|costs|was|up|for) (?:[a-z]+ )*C /, 8.5],
    [
      / (?:what does it run|what do (?:we|they) run|what (?:[a-z]+ )*(?:spend|spending) on|how much (?:money|cost) (?:did|do|have) we) /,
      9,
    ],
    [/ how much (?:cost|money|C) (?:[a-z]+ )*(?:throw|threw|toss|waste|lose|lost) /, 9.5],
    [/ C /, 5.5],
    [
      / (?:F|M|Y) (?:[a-z]+ )*(?:went|gone|going|jumped|rose|dropped|climbed) (?:up |down )?(?:to )?(?:N|C|Q) /,
      8,
    ],
    [/ (?:spend|spent|spending|paid|pay|money|dollars) /, 6.5],
    [/ (?:waste|wasted) (?:[a-z]+ )*(?:dollars|money|C) /, 9],
    [/ how much (?:[a-z]+ )*(?:waste|lose|lost) (?:[a-z]+ )*(?:dollars|money) /, 9],
  ],
  slots: (lexed) => ({
    ...compare(lexed),
    ...(find(lexed, / N (?:[a-zA]+ ){0,3}(?:R|P) | (?:R|P) for N /) ? quantity(lexed) : {}),
    ...recipe(lexed),
    ...(lexed.syms.has('R') && lexed.syms.has('A') ? avoid(lexed) : {}),
    ...(lexed.syms.has('R') ? madeWith(lexed) : ingredient(lexed)),
    ...price(lexed),
    ...pack(lexed),
    ...per(lexed),
    ...(/ (?:waste|wasted|toss|tossed|threw) /.test(lexed.shape) ? { reason: 'waste' } : {}),
    ...budget(lexed),
    ...when(lexed),
  }),
};

/** "With almond butter": what is on no card is not priced in silence. */
function madeWith(lexed: Lexed): Slots {
  const food = find(lexed, / (?:with|using) (?:[a-z]+ )?F /)?.find(({ sym }) => sym === 'F');
  return food ? { made_with: nameOf(food) } : {};
}

function compare(lexed: Lexed): Slots {
  const named = dishes(lexed);
  const things = named.length > 1 ? named : all(lexed, 'F');
  return things.length > 1 && / (?:cheaper|or|vs|versus|than|compare) /.test(lexed.shape)
    ? { compare: things.map(nameOf) }
    : {};
}

/** Money spent or left, of no dish: "budget left", "what did we spend this week". */
function budget({ shape, syms }: Lexed): Slots {
  const isAsked = / (?:budget|spend|spent|spending) /.test(shape);
  return isAsked && ['R', 'F', 'M', 'P'].every((sym) => !syms.has(sym)) ? { filter: 'budget' } : {};
}

function price(lexed: Lexed): Slots {
  const told = find(lexed, TOLD) ?? find(lexed, TOLD_NOW);
  const said = told?.find(({ sym }) => sym === 'N' || sym === 'C');
  if (said) return { price: told?.some(({ sym }) => sym === '-') ? -numberOf(said) : numberOf(said) };
  const atom =
    first(lexed, 'C') ??
    lastIn(lexed, / (?:price|cost|costs|priced) (?:[a-zF]+ )*(?:to|is|at|now|up|=) N /, 'N') ??
    lastIn(lexed, / (?:went|gone|go) (?:up |down )?to N /, 'N');
  return atom ? { price: numberOf(atom) } : {};
}

/** "for a 50 lb bag", "per lb". */
function pack(lexed: Lexed): Slots {
  const atoms = find(lexed, / (?:Q U|Q|U) /) && find(lexed, / Q (?:U )?/);
  const amount = atoms?.[0];
  if (!amount) return {};
  const shape = atoms?.[1]?.unit;
  return {
    pack: `${numberOf(amount)} ${amount.unit}${shape ? ` ${shape}` : ''}`,
    amount: numberOf(amount),
    amount_unit: amount.unit,
  };
}

function per(lexed: Lexed): Slots {
  const unit = find(lexed, / (?:per|a|each|every) (?:P|U|batch|person|R|athlete|game|week) /)?.at(-1);
  if (!unit || !/ (?:per|each|every) /.test(lexed.shape)) return {};
  return { per: unit.unit ?? unit.word };
}
