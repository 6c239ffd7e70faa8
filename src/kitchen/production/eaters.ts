import type { Need } from '../../nutrition/allergens.ts';
import { type Profile, profileKey } from '../../nutrition/cover/profile.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { PersonNeeds } from '../roster/roster.ts';

/** People who avoid the same and get the same. No codes: a plan knows counts only. */
export interface Eaters extends Profile {
  readonly people: number;
  /** Pieces each of them gets, before spares. */
  readonly piecesEach: number;
  /** Recipes they like, by id. */
  readonly likes: readonly string[];
}

/** "5 nut free": so many people who avoid these. */
export interface SaidNeed {
  readonly avoid: readonly Need[];
  /** Foods beyond the list of needs, in words. */
  readonly foods: readonly string[];
  readonly people: number;
}

/** More people than any kitchen of a team feeds: beyond it there is a typing error. */
const MOST_PEOPLE = 5_000;

/**
 * The people of a plan by what they avoid, as they were said: who has two needs is said with both.
 * @throws Problem `bad_quantity` for counts that are no counts, or more needs than people.
 */
export function saidEaters(people: number, needs: readonly SaidNeed[], piecesEach: number): Eaters[] {
  checkPeople(people);
  for (const need of needs) checkCount(need.people);
  const needing = needs.reduce((sum, need) => sum + need.people, 0);
  if (needing > people) throw moreNeedsThanPeople(people, needing);
  const plain = people - needing;
  return grouped([
    ...needs.map(({ avoid, foods, people: count }) => ({
      avoid,
      foods,
      people: count,
      piecesEach,
      likes: [],
    })),
    ...(plain > 0 ? [{ avoid: [], foods: [], people: plain, piecesEach, likes: [] }] : []),
  ]);
}

/**
 * The people of a plan by the roster: everybody with needs, and the rest of the count without.
 * @throws Problem `needs_more` when more people have needs than there are people.
 */
export function rosterEaters(people: number, roster: readonly PersonNeeds[], piecesEach: number): Eaters[] {
  checkPeople(people);
  const needing = roster.filter(({ avoid, foods }) => avoid.length + foods.length > 0);
  if (needing.length > people) {
    throw new Problem(
      'needs_more',
      `${needing.length} people on the roster have needs and ${people} are fed: I cannot know which.`,
      `Say the needs that come along, like "plan saturday ${people} travelling 5 nut free 2 coeliac".`,
    );
  }
  const others = roster.filter((person) => !needing.includes(person)).slice(0, people - needing.length);
  const unnamed = people - needing.length - others.length;
  return grouped([
    ...[...needing, ...others].map(({ avoid, foods, pieces, likes }) => ({
      avoid,
      foods,
      people: 1,
      piecesEach: pieces ?? piecesEach,
      likes,
    })),
    ...(unnamed > 0 ? [{ avoid: [], foods: [], people: unnamed, piecesEach, likes: [] }] : []),
  ]);
}

/** One group for all who avoid, get and like the same; those without needs last. */
function grouped(eaters: readonly Eaters[]): Eaters[] {
  const groups = new Map<string, Eaters>();
  for (const each of eaters) {
    const key = `${profileKey(each)}${each.piecesEach}${[...each.likes].sort().join()}`;
    const before = groups.get(key);
    groups.set(key, before ? { ...before, people: before.people + each.people } : each);
  }
  const needs = ({ avoid, foods }: Eaters): number => avoid.length + foods.length;
  return [...groups.values()].sort((a, b) => Math.sign(needs(b)) - Math.sign(needs(a)));
}

function checkPeople(people: number): void {
  if (Number.isInteger(people) && people >= 1 && people <= MOST_PEOPLE) return;
  throw new Problem(
    'bad_quantity',
    people === 0 ? 'For nobody there is nothing to plan.' : `A plan for ${people} people cannot be made.`,
    `Write a whole number from 1 to ${MOST_PEOPLE.toLocaleString('en-US')}: "plan saturday 44 travelling".`,
  );
}

function checkCount(count: number): void {
  if (Number.isInteger(count) && count >= 1) return;
  throw new Problem(
    'bad_quantity',
    `${count} people with a need is no count.`,
    'Write whole numbers from 1: "plan saturday 44 travelling 5 nut free 2 coeliac".',
  );
}

const moreNeedsThanPeople = (people: number, needing: number): Problem =>
  new Problem(
    'bad_quantity',
    `${needing} people with needs are more than the ${people} who are fed.`,
    'Say everybody in the first number, and people with two needs once, with both: "plan saturday 44 travelling 3 nut free 2 nut free and gluten free".',
  );
