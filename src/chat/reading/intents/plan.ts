import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { knownRecipe, needsOf, opponent, sport } from '../slots/names.ts';
import { numberOf } from '../slots/numbers.ts';
import { when } from '../slots/when.ts';

export const plan: IntentReader = {
  intent: 'plan',
  cues: [
    'plan',
    'planning',
    'planned',
    'travelling',
    'traveling',
    'travel',
    'trip',
    'production',
    'prep',
    'roster',
    'bus',
    'packs',
    'going',
    'A',
    'heads',
    'bags',
  ],
  rules: [
    [/^ what (?:should|do|shall) (?:we|i) (?:need to )?(?:bake|make|prep|produce) W /, 7.5],
    [/ (?:plan|planning|production plan) /, 7.5],
    [
      / N (?:P )?(?:are )?(?:travelling|traveling|travel|travelers|going|heading|coming|flying|on the bus|on bus|to feed) /,
      8,
    ],
    [/ (?:travelling|traveling|travel|trip|bus|roster|flight) .*N /, 7],
    [/ N .*(?:travelling|traveling|trip|on the bus) /, 7],
    [/ N (?:[a-z]+ ){0,3}(?:P )?(?:are |is |who are |with )?A .*N (?:[a-z]+ )?(?:P )?(?:are |is )?A /, 8],
    [/ (?:W|N) .*N (?:P )?.*N (?:are |is )?A /, 7],
    [/ N P .*N (?:are |is |with |[a-z]+ )?A /, 7.6],
    [
      / (?:what|how much|how many) (?:[a-z]+ )*(?:prep|make|bake|produce|need) (?:[a-z]+ )*for (?:[a-z]+ )*(?:W|game|trip|weekend) .*N /,
      7,
    ],
    [/ what (?:[a-z]+ )*(?:prep|make|bake|produce) (?:[a-z]+ )*for (?:[a-z]+ )*(?:W|game|trip) /, 6.6],
    [/ (?:packs|bags) for N /, 6.5],
  ],
  slots: (lexed) => ({
    ...people(lexed),
    ...needs(lexed),
    ...opponent(lexed),
    ...when(lexed),
    ...sport(lexed),
    ...knownRecipe(lexed),
  }),
};

/** The number with no need behind it is everybody. */
function people(lexed: Lexed): Slots {
  const { seen } = lexed;
  const atom = seen.find((each, i) => each.sym === 'N' && needAfter(seen, i) === undefined);
  return atom ? { quantity: numberOf(atom) } : {};
}

function needs(lexed: Lexed): Slots {
  const { seen } = lexed;
  const found: SlotValue[] = [];
  seen.forEach((atom, i) => {
    const count = atom.sym === 'N' ? atom.value : atom.sym === 'one' || atom.sym === 'a' ? 1 : undefined;
    const need = count === undefined ? undefined : needAfter(seen, i);
    if (count !== undefined && need) found.push({ avoid: needsOf(need), people: count });
  });
  return found.length > 0 ? { needs: found } : {};
}

const BETWEEN =
  /^(P|are|is|who|with|have|has|need|needs|eat|were|of|them|a|an|that|the|people|allergic|kid|x)$/;

/** The needs that belong to the count at `i`: "5 who are nut free and dairy free". */
function needAfter(seen: readonly Atom[], i: number): Atom[] | undefined {
  let k = i + 1;
  while (BETWEEN.test(seen[k]?.sym ?? '')) k++;
  if (seen[k]?.sym !== 'A') return undefined;
  const list: Atom[] = [];
  for (; seen[k]; k++) {
    const atom = seen[k];
    if (atom?.sym === 'A') list.push(atom);
    else if (!/^(and|&|\+|or)$/.test(atom?.sym ?? '') || seen[k + 1]?.sym !== 'A') break;
  }
  return list;
}
