import { bothOf, type RosterRead } from './read-roster.ts';
import type { PersonNeeds, Roster } from './roster.ts';

export interface RosterKept {
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
  /** People of the roster whom the file does not name; they stay. */
  readonly notInFile: number;
  /** People who had told more than the file says: both are kept. */
  readonly toldMore: number;
}

/** Puts what a file says into the roster. What people told themselves is never lost to a file. */
export async function keepRoster(roster: Roster, { people }: RosterRead): Promise<RosterKept> {
  const before = new Map((await roster.all()).map((person) => [person.code, person]));
  const named = new Set(people.map(({ code }) => code));
  let toldMore = 0;
  const kept = people.map((person) => {
    const known = before.get(person.code);
    if (!known || known.toldBy === 'file' || !saysMore(known, person)) return person;
    toldMore++;
    return { ...bothOf(known, person), toldBy: known.toldBy };
  });
  const changed = kept.filter((person) => {
    const known = before.get(person.code);
    return known !== undefined && !isSame(known, person);
  });
  const added = kept.filter(({ code }) => !before.has(code)).length;
  await roster.put(kept);
  return {
    added,
    changed: changed.length,
    unchanged: kept.length - added - changed.length,
    notInFile: [...before.keys()].filter((code) => !named.has(code)).length,
    toldMore,
  };
}

const saysMore = (known: PersonNeeds, person: PersonNeeds): boolean =>
  known.avoid.some((need) => !person.avoid.includes(need)) ||
  known.foods.some((food) => !person.foods.includes(food));

function isSame(a: PersonNeeds, b: PersonNeeds): boolean {
  const facts = ({ updatedMs: _ms, toldBy: _by, ...rest }: PersonNeeds) =>
    JSON.stringify(Object.entries(rest).sort(([x], [y]) => (x < y ? -1 : 1)));
  return facts(a) === facts(b);
}
