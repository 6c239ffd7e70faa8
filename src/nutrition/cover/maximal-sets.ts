/** Up to here every set is looked at; beyond it sets are grown, and the largest may be missed. */
export const MOST_EXACT = 10;

/**
 * The largest sets of `0 … count-1` of which `holds` is true, where whatever holds of a set holds of its parts.
 * `maybe` is a quick test that is never false where `holds` is true.
 */
export function maximalSets(
  count: number,
  holds: (members: readonly number[]) => boolean,
  maybe: (members: readonly number[]) => boolean = () => true,
): (readonly number[])[] {
  if (count === 0) return [];
  const all = Array.from({ length: count }, (_, i) => i);
  return count <= MOST_EXACT ? fromAbove(all, holds, maybe) : grown(all, holds, maybe);
}

type Test = (members: readonly number[]) => boolean;

/** From the whole set downward; a set inside one that holds is not looked at. */
function fromAbove(all: readonly number[], holds: Test, maybe: Test): (readonly number[])[] {
  const found: { bits: number; members: readonly number[] }[] = [];
  const bitsOf = (members: readonly number[]) => members.reduce((bits, i) => bits | (1 << i), 0);
  let level = new Map([[bitsOf(all), all]]);
  while (level.size > 0) {
    const next = new Map<number, readonly number[]>();
    for (const [bits, members] of level) {
      if (found.some((set) => (set.bits & bits) === bits)) continue;
      if (maybe(members) && holds(members)) {
        found.push({ bits, members });
        continue;
      }
      if (members.length === 1) continue;
      for (const left of members)
        next.set(
          bits & ~(1 << left),
          members.filter((i) => i !== left),
        );
    }
    level = next;
  }
  return found.map(({ members }) => members);
}

/** From each member upward, in two orders. */
function grown(all: readonly number[], holds: Test, maybe: Test): (readonly number[])[] {
  const found = new Map<string, readonly number[]>();
  for (const seed of all) {
    for (const order of [all, [...all].reverse()]) {
      const members = grownFrom(seed, order, holds, maybe);
      if (members.length > 0) found.set(members.join(), members);
    }
  }
  const sets = [...found.values()];
  return sets.filter(
    (set) => !sets.some((other) => other.length > set.length && set.every((i) => other.includes(i))),
  );
}

function grownFrom(seed: number, order: readonly number[], holds: Test, maybe: Test): readonly number[] {
  let members: readonly number[] = [seed];
  for (const next of order) {
    if (next === seed) continue;
    const more = [...members, next].sort((a, b) => a - b);
    if (maybe(more)) members = more;
  }
  // What may hold nearly always does; where it does not, members are given up until it does.
  while (members.length > 0 && !holds(members)) {
    const drop = members.findLast((i) => i !== seed) ?? seed;
    members = members.filter((i) => i !== drop);
  }
  return members;
}
