import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { find, first } from '../slots/find.ts';
import { ingredient } from '../slots/names.ts';
import { amount, factor, numberOf, outputUnit } from '../slots/numbers.ts';

export const measure: IntentReader = {
  intent: 'measure',
  cues: ['Q', 'U', 'F', 'T', 'convert', 'conversion', 'weigh', 'weighs'],
  rules: [
    [
      / Q (?:of )?(?:[a-z]+ )?(?:F |M |Y )?(?:[a-z]+ )?(?:in|to|into|=|as|equals|equal|is) (?:how many |\? )?(?:= )?U /,
      8,
    ],
    [/ Q (?:of )?(?:F |M |Y )?(?:= )?\?? ?(?:how many )?U /, 7.5],
    [/ = (?:\? )?U /, 8],
    [
      / how (?:many|much) U (?:[a-z]+ )*(?:in|is|are|to|make|makes|for|of|=|from|does|equals) (?:[a-z]+ )*Q /,
      8.7,
    ],
    [/ how (?:many|much) U (?:in|is|are|to|per|make|makes) (?:a |an |one )?U /, 8.5],
    [/ U (?:in|per|is) (?:a |an |one )?(?:Q|U) /, 7.5],
    [/ (?:convert|conversion) /, 9],
    [/ what (?:do|does|would) (?:[a-z]+ )?(?:Q|U) (?:of )?(?:F |M |Y )?weigh /, 9],
    [/ how heavy (?:is|are) (?:a |an |one )?(?:Q|U) (?:of )?(?:F|M|Y) /, 9],
    [/ how many U (?:[a-z]+ )?Q (?:is|are|make|makes|equals?) /, 8.7],
    [/ how (?:much|many|heavy) (?:[a-z]+ )*Q (?:of )?(?:F |M |Y )?(?:weigh|weighs|in U) /, 9],
    [/ Q (?:of )?(?:F |M |Y )(?:weigh|weighs|weight) /, 8],
    [/ (?:weight|mass|grams|U) of (?:[a-z]+ )?Q /, 8],
    [/ (?:how much|what) weighs? (?:a |one )?(?:Q|U) /, 9],
    [/ (?:Q|U) (?:of )?(?:F |M )?(?:is|are|equals|makes) how (?:many|much) U /, 9],
    [/ B (?:of )?Q $| Q B \??/, 8.2],
    [/ B (?:of )?Q /, 6],
    [/^ (?:[a-z]+ )?Q (?:of )?(?:F|M|Y) $/, 3.2],
    [/ Q (?:of )?(?:F|M|Y) (?:by|in) (?:weight|mass|volume) /, 8],
    [/ T (?:in|to|into|=) (?:[a-z]+ )?(?:celsius|fahrenheit|c|f|celcius|farenheit|U) /, 9],
    [/ (?:U|Q) (?:of )?(?:F|M) in U /, 7.5],
    [/ U (?:F|M) (?:in|to) U /, 7.6],
    [/ N [a-z]{3,} (?:of )?(?:F |M )?(?:in|to|into) U $/, 7],
    [/^ N [a-z]{3,} of F $/, 2],
    [/^ (?:convert )?U (?:to|in|into|per|vs) (?:a |an |one )?U (?:\? )?$/, 7],
    [
      / how (?:many|much) U (?:would|will|does|do|is|are|makes?) (?:[a-z]+ )?Q (?:of )?(?:F |M )?(?:be|make|come to|weigh|equal)? ?/,
      9.4,
    ],
    [/^ Q $/, 2],
    [/ (?:what|whats) (?:[a-z]+ )?Q in U /, 8.5],
    [/ how big (?:[a-z]+ )*Q /, 6],
    [/^ Q (?:in|to) (?:U|\?) /, 8],
  ],
  slots: (lexed) => ({
    ...ingredient(lexed),
    ...heat(lexed),
    ...strangeUnit(lexed),
    ...amount(lexed),
    ...factor(lexed),
    ...outputUnit(lexed),
    ...unitPair(lexed),
  }),
};

/** "3 blorps of oats in grams": a measure nobody knows is named as it was typed, so that the answer can object to it. */
function strangeUnit(lexed: Lexed): Slots {
  const [count, unit] =
    find(lexed, / N [a-z]{3,} (?:of )?(?:F |M )?(?:in|to|into) U /) ??
    find(lexed, /^ N [a-z]{3,} of F $/) ??
    [];
  return count && unit?.unknown ? { amount: numberOf(count), amount_unit: unit.text } : {};
}

function heat(lexed: Lexed): Slots {
  const temp = first(lexed, 'T');
  if (!temp) return {};
  return { amount: temp.value, amount_unit: temp.unit, output_unit: temp.unit === 'f' ? 'c' : 'f' };
}

/** "how many tsp per tbsp": the second unit is one of it. */
function unitPair(lexed: Lexed): Slots {
  const asked = find(lexed, / U (?:of )?(?:F |M )?(?:is|are|equals|makes) how (?:many|much) U /)?.[0];
  if (asked && !lexed.syms.has('Q'))
    return {
      amount: 1,
      amount_unit: asked.unit,
      output_unit: lexed.seen.findLast(({ sym }) => sym === 'U')?.unit,
    };
  const two = find(lexed, / U (?:in|per|is|to|make|makes) (?:a |an |one )?U /)?.at(-1);
  const isAsked =
    / (?:how many|how much) |^ (?:convert )?U (?:to|in|into|per) (?:a |an |one )?U (?:\? )?$/.test(
      lexed.shape,
    );
  const turned = find(lexed, /^ (?:convert )?U (?:to|in|into) (?:a |one )?U /)?.find(
    ({ sym }) => sym === 'U',
  );
  if (turned && !lexed.syms.has('Q')) return { amount: 1, amount_unit: turned.unit, output_unit: two?.unit };
  return two && !lexed.syms.has('Q') && isAsked ? { amount: 1, amount_unit: two.unit } : {};
}
