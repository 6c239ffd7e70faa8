import type { Food, Role } from '../food.ts';
import type { Recipe } from '../recipe.ts';
import { matchAmount } from './amount.ts';
import { formOf } from './form.ts';
import type { LineSwap } from './offer.ts';
import { type Setting, scoreOf } from './score.ts';
import { type Candidate, candidateOf, isClear, type SwapTable } from './table.ts';

/** The lines of a recipe that hold one food and change together. */
export interface Group {
  readonly food: Food;
  readonly lines: readonly { readonly index: number; readonly role: Role; readonly massG: number }[];
  readonly optional: boolean;
}

/** One way to change a group. `score` compares ways of the same group. */
export interface Choice {
  readonly swaps: readonly LineSwap[];
  readonly score: number;
  /** Foods a cook sees as the same swap (two brands of oat drink) share a family. */
  readonly family: string;
}

/** Groups the lines of these foods, in recipe order. */
export function groupsOf(
  recipe: Recipe,
  foods: ReadonlyMap<string, Food>,
  isMeant: (food: Food) => boolean,
): Group[] {
  const groups = new Map<string, { food: Food; lines: Group['lines'][number][]; optional: boolean }>();
  for (const [index, line] of recipe.lines.entries()) {
    const food = foods.get(line.foodId);
    if (!food || !isMeant(food)) continue;
    const group = groups.get(food.id) ?? { food, lines: [], optional: true };
    group.lines.push({ index, role: line.role, massG: line.massG });
    group.optional &&= line.optional;
    groups.set(food.id, group);
  }
  return [...groups.values()];
}

/** All foods that might stand in for the food of a group. */
function poolOf(group: Group, from: Candidate, table: SwapTable): Set<Candidate> {
  const role = group.lines[0]?.role;
  // What has the role, and what has the form: a gluten-free pretzel is a pretzel whatever role its row names.
  const ofRole = role === undefined ? [] : (table.byRole.get(role) ?? []);
  return new Set([...ofRole, ...(table.byForm.get(from.form) ?? [])]);
}

/** What the food of a group, and each food that could stand in for it, is clear of: bits as in `Candidate.clear`. */
export function clearOfChoices(group: Group, table: SwapTable, setting: Setting): number[] {
  const from = table.byId.get(group.food.id) ?? candidateOf(group.food);
  const roles = [...new Set(group.lines.map((line) => line.role))];
  const masks = new Set([from.clear, ...(mayLeaveOut(group) ? [-1] : [])]);
  for (const to of poolOf(group, from, table)) {
    if (!masks.has(to.clear) && lowestScore(from, to, roles, setting) !== undefined) masks.add(to.clear);
  }
  return [...masks];
}

/** Ways to change a group, best first, clear of the needs by themselves, at most two of a family. */
export function rank(
  group: Group,
  table: SwapTable,
  bits: number,
  setting: Setting,
  excluded: ReadonlySet<string>,
  most: number,
): Choice[] {
  const from = table.byId.get(group.food.id) ?? candidateOf(group.food);
  const roles = [...new Set(group.lines.map((line) => line.role))];
  const scored: { to: Candidate; score: number }[] = [];
  for (const to of poolOf(group, from, table)) {
    if (excluded.has(to.food.id) || !isClear(to, bits)) continue;
    const score = lowestScore(from, to, roles, setting);
    if (score !== undefined) scored.push({ to, score });
  }
  scored.sort((a, b) => b.score - a.score || (a.to.food.id < b.to.food.id ? -1 : 1));
  return distinct(group, from, scored, most);
}

function lowestScore(
  from: Candidate,
  to: Candidate,
  roles: readonly Role[],
  setting: Setting,
): number | undefined {
  let lowest = Number.POSITIVE_INFINITY;
  for (const role of roles) {
    const score = scoreOf(from, to, role, setting);
    if (score === undefined) return undefined;
    lowest = Math.min(lowest, score);
  }
  return lowest;
}

/** What a second swap with the same allergens is worth less: three dairy milks help nobody who is out of milk. */
const SAME_AGAIN = 0.8;

function distinct(
  group: Group,
  from: Candidate,
  scored: readonly { to: Candidate; score: number }[],
  most: number,
): Choice[] {
  const choices: Choice[] = [];
  const families = new Set<string>();
  const again = new Map<string, number>();
  const rest = [...scored];
  while (choices.length < most && rest.length > 0) {
    const { to, score } = takeBest(rest, again);
    const family = familyOf(to);
    const swaps = families.has(family) ? undefined : swapLines(group, from, to);
    if (!swaps) continue;
    families.add(family);
    again.set(profileOf(to), (again.get(profileOf(to)) ?? 0) + 1);
    choices.push({ swaps, score, family });
  }
  return choices;
}

/** Takes out the best of what is left, those like the chosen ones counting less; `rest` is sorted by score. */
function takeBest(
  rest: { to: Candidate; score: number }[],
  again: ReadonlyMap<string, number>,
): { to: Candidate; score: number } {
  let at = 0;
  let best = Number.NEGATIVE_INFINITY;
  for (const [i, { to, score }] of rest.entries()) {
    if (score <= best) break;
    const worth = score - SAME_AGAIN * Math.min(2, again.get(profileOf(to)) ?? 0);
    if (worth > best) {
      best = worth;
      at = i;
    }
  }
  const [taken] = rest.splice(at, 1);
  if (!taken) throw new Error('nothing is left to take');
  return { to: taken.to, score: best };
}

/** What a cook or an eater chooses between: the form and the major allergens in it. */
const profileOf = (c: Candidate): string => `${c.form}|${c.majors}`;

const familyOf = (c: Candidate): string =>
  [
    c.form,
    c.food.contains.map((m) => `${m.allergen}:${m.species ?? ''}`).sort(),
    baseWord(c),
    c.flavor ?? '',
  ].join('|');

/** "Oat drink, plain" and "Oat drink, barista" begin with the same word. */
const baseWord = (c: Candidate): string => /[a-z]{3,}/.exec(c.food.name.toLowerCase())?.[0] ?? c.food.id;

/** The lines of a group with another food in the matching amounts; `undefined` when an amount makes no sense. */
export function swapLines(group: Group, from: Candidate, to: Candidate): LineSwap[] | undefined {
  const swaps: LineSwap[] = [];
  for (const line of group.lines) {
    const matched = matchAmount(from.food, line.massG, to.food, line.role);
    if (!matched || matched.massG <= 0) return undefined;
    swaps.push({
      lineIndex: line.index,
      role: line.role,
      from: from.food,
      to: to.food,
      massBeforeG: Math.round(line.massG * 10) / 10,
      massAfterG: Math.max(0.1, Math.round(matched.massG * 10) / 10),
      keeps: matched.keeps,
      ratio: matched.ratio,
      sameForm: from.form === to.form,
    });
  }
  return swaps;
}

/** An optional ingredient, or a dash of flavor, may be left out where nothing can stand in for it. */
export const mayLeaveOut = (group: Group): boolean =>
  group.optional ||
  (group.lines.every((line) => line.role === 'flavor') && ['extract', 'spice'].includes(formOf(group.food)));

export const leaveOut = (group: Group): Choice => ({
  swaps: group.lines.map((line) => ({
    lineIndex: line.index,
    role: line.role,
    from: group.food,
    massBeforeG: Math.round(line.massG * 10) / 10,
    massAfterG: 0,
    sameForm: false,
  })),
  score: 0,
  family: 'left out',
});
