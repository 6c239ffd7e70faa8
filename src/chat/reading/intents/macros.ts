import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first } from '../slots/find.ts';
import { avoid, dishes, ingredient, nameOf, nutrients, recipe } from '../slots/names.ts';
import { numberOf, pieces, quantity } from '../slots/numbers.ts';
import { targets } from '../slots/targets.ts';

export const macros: IntentReader = {
  intent: 'macros',
  cues: [
    'M',
    'macros',
    'macro',
    'nutrition',
    'nutritional',
    'nutrients',
    'label',
    'cut',
    'compare',
    '+',
    'facts',
    'kcals',
  ],
  rules: [
    [
      / how (?:many|much) M (?:does|do|did) (?:[a-z]+ )?(?:N )?(?:R|P|F) (?:have|has|hold|contain|give) /,
      8.8,
    ],
    [
      / how (?:many|much) M (?:is there |are there |is |are )?in (?:a |an |one |N |the )*(?:R|P|F) (?:without|with|plus|minus|[a-z]+ )*/,
      7.6,
    ],
    [/ (?:macros?|nutrition|nutritional|nutrients) /, 7],
    [/ (?:nutrition|nutritional|nutrition facts|facts) (?:label|facts|panel|info) /, 8.2],
    [/ label /, 3.5],
    [/ (?:how much|how many|hows|whats the|what is the|what are the) (?:[a-z]+ )?(?:U )?(?:of )?M /, 6.5],
    [/ how (?:many|much) U (?:of )?M /, 7],
    [/ M (?:[a-z]+ ){0,3}(?:R|F|P) /, 5.5],
    [/ (?:R|F|P) (?:[a-z]+ ){0,2}M /, 5],
    [/^ (?:and |the |whats |total )*M (?:and M )*\?? ?$/, 6.5],
    [/ M (?:and M )*(?:in|per|of|for|on) /, 6.2],
    [/ M \? /, 5],
    [/ compare /, 6.5],
    [
      / (?:whats|which|what|who) (?:[a-z]+ )*(?:higher|lower|more|less|most|least|highest|lowest) (?:in )?M .*(?:R|P) or (?:the )?(?:R|P) /,
      8.6,
    ],
    [/ (?:how much|how many) M (?:is |are )?in (?:a |an |one )?N (?:P|R) /, 8.6],
    [/ (?:R|P) (?:vs|versus|or) (?:the )?(?:R|P) (?:[a-z]+ )*M /, 7.5],
    // A recipe pasted behind the word: whatever its lines sound like, its figures are asked for.
    [/^ (?:macros?|nutrition) .*(?:Q|N) .*(?:Q|N) .*(?:Q|N) /, 12],
    [/ (?:more|most|less|higher|lower|highest|lowest) M .*(?:R|F|P) /, 6],
    [
      / (?:hold|holds|still|have|has|enough|get|reach|hit) (?:[a-z]+ )*(?:Q|N) (?:of )?M .*(?:at|into|if) N /,
      9,
    ],
    [/ (?:P|R) enough M /, 7],
    [/ (?:is|are|does|do|will|would) .*(?:Q|N) (?:of )?M .*\? /, 6.5],
    [/ (?:cut|slice|sliced|divide) (?:it |them |this )?(?:in |into )N /, 5.2],
    [/ (?:cut|slice) .*N (?:instead of|rather than|not) N /, 6.2],
    [/ (?:F|Q F|N F) \+ (?:Q |N )?F /, 6],
    [/ (?:Q|N) (?:of )?F (?:and|plus|with|\+) (?:a |N |Q )?F $/, 4.5],
    [/ M .*(?:without|if|with|add|plus|minus) /, 6.5],
    [/ (?:can|could|should|may) (?:we|i|you|u) add (?:[a-z]+ )?(?:Q )?F /, 5.5],
    [/ how (?:healthy|nutritious|filling) /, 5],
    [/ (?:G|percent) (?:of )?(?:[a-z]+ )*M /, 5],
  ],
  slots(lexed) {
    const goal = targets(lexed);
    return {
      ...(/ label | facts label | panel /.test(lexed.shape) ? { output: 'label' } : {}),
      ...nutrients(lexed),
      ...per(lexed),
      ...compare(lexed),
      ...subject(lexed),
      ...pieces(lexed),
      ...portion(lexed),
      ...counted(lexed),
      ...change(lexed),
      ...(lexed.syms.has('R') && lexed.syms.has('A') && change(lexed).remove === undefined
        ? avoid(lexed)
        : {}),
      ...(goal.length > 0 ? { target: goal as unknown as SlotValue } : {}),
    };
  },
};

function subject(lexed: Lexed): Slots {
  const named = first(lexed, 'R');
  if (named) return { recipe: nameOf(named) };
  const lead =
    lexed.syms.has('F') && !/ (?:add|adding|with|plus|without|minus) (?:[a-z]+ )*(?:Q )?F $/.test(lexed.shape)
      ? ingredient(lexed)
      : {};
  return lead.ingredient === undefined ? recipe(lexed) : lead;
}

function per(lexed: Lexed): Slots {
  const covered = find(lexed, / (?:per|each|every|a|whole) (?:P|Q|R|U|batch|recipe|slab|person|N U|N g) /);
  const unit = covered?.at(-1);
  if (!unit || (covered?.[0]?.sym === 'a' && unit.sym !== 'P')) return {};
  if (unit.sym === 'Q') return { per: `${unit.value} ${unit.unit}` };
  return { per: unit.unit ?? unit.word };
}

/** "100 g rolled oats", "2 cups granola": how much of it. */
function portion(lexed: Lexed): Slots {
  const amount = find(lexed, / (?:[a-z]+ )?Q (?:of )?(?:[a-z]+ )?(?:F|R) /)?.find((atom) => atom.sym === 'Q');
  if (!amount || / per Q /.test(lexed.shape)) return {};
  return {
    portion: numberOf(amount),
    portion_unit: amount.unit,
    amount: numberOf(amount),
    amount_unit: amount.unit,
  };
}

function counted(lexed: Lexed): Slots {
  return find(lexed, / N (?:[a-z]+ )?(?:P|R) | N of (?:the|those|these|our) (?:P|R) /) &&
    !/ (?:at|into|(?:cut|slice|sliced|divide) (?:[a-z]+ )?in) N P /.test(lexed.shape)
    ? quantity(lexed)
    : {};
}

function compare(lexed: Lexed): Slots {
  const recipes = dishes(lexed);
  const things = recipes.length > 1 ? recipes : all(lexed, 'F');
  if (things.length < 2 || !/ (?:compare|vs|versus|or|than|between|against) /.test(lexed.shape)) return {};
  return { compare: things.map(nameOf) };
}

const ADD =
  / (?:add|added|adding|plus|\+|with) (?:[a-z]+ )*?(?:[QN] )?(?:of )?F (?:(?:and|\+|plus) (?:[QN] )?F )*/;
const REMOVE =
  / (?:without|minus|remove|removing|leave out|leaving out|take out|taking out|took out|drop|omit|skip|skipping|no|less) (?:the )?(?:F|A) /;

function change(lexed: Lexed): Slots {
  const added = find(lexed, ADD)?.filter((atom) => atom.sym === 'F') ?? [];
  const removed = find(lexed, REMOVE)?.filter((atom) => atom.sym === 'F' || atom.sym === 'A') ?? [];
  return { ...oneOrMany('add', added), ...oneOrMany('remove', removed) };
}

function oneOrMany(name: string, atoms: readonly Atom[]): Slots {
  const [only, ...others] = atoms.map(nameOf);
  if (only === undefined) return {};
  return { [name]: others.length > 0 ? [only, ...others] : only };
}
