import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { find, first } from '../slots/find.ts';
import { ingredient } from '../slots/names.ts';
import { amount, factor, outputUnit } from '../slots/numbers.ts';

export const measure: IntentReader = {
  intent: 'measure',
  cues: ['Q', 'U', 'T', 'convert', 'conversion', 'weigh'],
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
    [/ B (?:of )?Q $/, 8],
    [/ B (?:of )?Q /, 6],
    [/^ (?:[a-z]+ )?Q (?:of )?(?:F|M|Y) $/, 3.2],
    [/ Q (?:of )?(?:F|M|Y) (?:by|in) (?:weight|mass|volume) /, 8],
    [/ T (?:in|to|into|=) (?:[a-z]+ )?(?:celsius|fahrenheit|c|f|celcius|farenheit|U) /, 9],
    [/ (?:U|Q) (?:of )?(?:F|M) in U /, 7.5],
    [/ U (?:F|M) (?:in|to) U /, 7.6],
    [/^ Q $/, 2],
    [/ (?:what|whats) (?:[a-z]+ )?Q in U /, 8.5],
    [/ how big (?:[a-z]+ )*Q /, 6],
    [/^ Q (?:in|to) (?:U|\?) /, 8],
  ],
  slots: (lexed) => ({
    ...ingredient(lexed),
    ...heat(lexed),
    ...unitPair(lexed),
    ...amount(lexed),
    ...factor(lexed),
    ...outputUnit(lexed),
  }),
};

function heat(lexed: Lexed): Slots {
  const temp = first(lexed, 'T');
  if (!temp) return {};
  return { amount: temp.value, amount_unit: temp.unit, output_unit: temp.unit === 'f' ? 'c' : 'f' };
}

/** "how many tsp per tbsp": the second unit is one of it. */
function unitPair(lexed: Lexed): Slots {
  const two = find(lexed, / U (?:in|per|is|to|make|makes) (?:a |an |one )?U /)?.at(-1);
  return two && !lexed.syms.has('Q') && / (?:how many|how much) /.test(lexed.shape)
    ? { amount: 1, amount_unit: two.unit }
    : {};
}
