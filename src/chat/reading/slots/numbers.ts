import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import { isContainerUnit } from '../lex/merge-containers.ts';
import type { Lexed } from '../lexed.ts';
import { find, first, lastIn } from './find.ts';

/** A number for a slot, at most four decimals; what is no number stays as typed so that the answer can object. */
export const numberOf = (atom: Atom): SlotValue =>
  atom.value === undefined ? (atom.text.split(' ')[0] ?? '') : Math.round(atom.value * 10_000) / 10_000;

/** "40 nut free oat bars", "40 bars", "40": how many and of which unit. */
export function quantity(lexed: Lexed): Slots {
  const at = quantityIndex(lexed.seen);
  const atom = lexed.seen[at];
  if (!atom || isHalfUnderstood(lexed.seen, at)) return {};
  return { quantity: numberOf(atom), ...most('quantity_max', atom), ...unitAfter(lexed.seen, at) };
}

/** "40 10 bars": two numbers side by side are no number anybody can be sure of, so it is asked for. */
const isHalfUnderstood = (seen: readonly Atom[], at: number): boolean =>
  seen[at - 1]?.sym === 'N' || seen[at + 1]?.sym === 'N';

const most = (name: string, atom: Atom): Slots => (atom.most === undefined ? {} : { [name]: atom.most });

/** The number that counts pieces: one with a piece or recipe after it, else the first. */
function quantityIndex(seen: readonly Atom[]): number {
  let plain = -1;
  for (let i = 0; i < seen.length; i++) {
    if (seen[i]?.sym !== 'N') continue;
    if (unitAfter(seen, i).unit !== undefined) return i;
    if (plain < 0) plain = i;
  }
  return plain;
}

const REACH = 4;
const STOPS = new Set([
  'N',
  'Q',
  'W',
  'C',
  'T',
  '+',
  '=',
  '?',
  'in',
  'for',
  'to',
  'into',
  'from',
  'with',
  'at',
  'on',
  'and',
  'not',
  'of',
  'L',
]);

/** The unit of the number at `i`: the piece, or the piece the recipe is cut into, a few words on. */
export function unitAfter(seen: readonly Atom[], i: number): Slots {
  for (let k = i + 1; k <= i + REACH; k++) {
    const atom = seen[k];
    if (!atom || (STOPS.has(atom.sym) && !(atom.sym === 'of' && k === i + 1))) return {};
    if (atom.sym === 'P') return { unit: atom.unit };
    if (atom.sym === 'R') return unitOfDish(atom, seen[k + 1]);
  }
  return {};
}

/** "9 trail mix bags": a dish that is no piece counts what it is handed out in. */
function unitOfDish(dish: Atom, next: Atom | undefined): Slots {
  if (dish.unit !== undefined) return { unit: dish.unit };
  return next?.sym === 'U' && isContainerUnit(next.unit) ? { unit: next.unit } : {};
}

/** The piece named without a number: "how many bars left". */
export function bareUnit(lexed: Lexed): Slots {
  const atom = first(lexed, 'P');
  return atom ? { unit: atom.unit } : {};
}

/** "2 cups", "2-3 tbsp": the first amount with a unit of measure. */
export function amount(lexed: Lexed): Slots {
  const atom = first(lexed, 'Q');
  if (!atom) return {};
  const unit = { amount: numberOf(atom), amount_unit: atom.unit };
  return atom.most === undefined || atom.value === undefined
    ? unit
    : { ...unit, amount_min: atom.value, amount_max: atom.most };
}

export function factor(lexed: Lexed): Slots {
  const atom = first(lexed, 'B');
  return atom ? { factor: numberOf(atom) } : {};
}

const CUT =
  / (?:cut|cuts|cutting|slice|slices|slicing|sliced|divide|divided|portion|portioned|split) (?:[a-zRPF]+ ){0,4}?(?:(?:in|into|to|at|as|by) )?N /;
const PIECES = / N (?:P|pieces|slices) (?:instead|from|per|out|a|not) /;
/** "fifty people not thirty": how many eat, not how many are cut. */
const PEOPLE_NOT = / N P (?:and )?(?:not|instead of|rather than) N /;
const WAS = / (?:instead of|not|rather than|from|was|were) N /;

/** "cut into 8 instead of 10". */
export function pieces(lexed: Lexed): Slots {
  if (!lexed.syms.has('N') || lexed.seen.length < 3) return {};
  const cut =
    lastIn(lexed, CUT, 'N') ??
    find(lexed, /(?<! goes| go| went) (?:into|at) N (?:P )?/)?.[1] ??
    find(lexed, PIECES)?.[0];
  if (!cut || find(lexed, PEOPLE_NOT)?.[1]?.unit === 'person') return {};
  const was = lastIn(lexed, WAS, 'N');
  return { pieces: numberOf(cut), ...(was && was !== cut ? { pieces_was: numberOf(was) } : {}) };
}

/** "60 g each", "1/4 cup each", "bars of 60 g": how much one piece is. */
export function portionEach(lexed: Lexed): Atom | undefined {
  if (!lexed.syms.has('Q')) return undefined;
  return (
    find(lexed, / Q (?:each|apiece|per P|a P|P) /)?.[0] ??
    find(lexed, / Q R for N /)?.[0] ??
    lastIn(lexed, / (?:P|R|each) (?:of|at|to|is|weighing|about|around|be) Q /, 'Q') ??
    lastIn(lexed, / (?:each|every|per) P (?:to|at|of|is|should be|be|weighs|weigh) Q /, 'Q') ??
    lastIn(lexed, / (?:M|and|,|with|a|at|each) P (?:weight |mass |size )?Q /, 'Q')
  );
}

export function pieceMass(lexed: Lexed): Slots {
  const atom = portionEach(lexed);
  if (!atom || !/^(g|oz)$/.test(atom.unit ?? '')) return {};
  return { piece_g: Math.round(Number(atom.value) * (atom.unit === 'oz' ? 28.349523125 : 1) * 10) / 10 };
}

/** The unit asked for: "in grams", "= ? cups", "how many tsp in". */
export function outputUnit(lexed: Lexed): Slots {
  if (!lexed.syms.has('U')) return {};
  const atom = lexed.seen.find(
    (each, i) =>
      each.sym === 'U' &&
      /^(in|to|into|=|\?|many|as|much|what|is|the|per|convert|U|F|Q|P|R|of|N)$|^$/.test(
        lexed.seen[i - 1]?.sym ?? '',
      ),
  );
  return atom ? { output_unit: atom.unit } : {};
}
