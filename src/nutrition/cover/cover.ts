import { type LinearSolver, linearSolver } from '../balance/solver.ts';
import type { Recipe } from '../recipe.ts';
import { reachOf } from '../swap/reach.ts';
import { fewestSets } from './fewest-sets.ts';
import { MOST_EXACT, maximalSets } from './maximal-sets.ts';
import { isCheckable, isWithin, type Profile, profileKey, suits, unionOf } from './profile.ts';
import { asOnCard, type Variant, type VariantBook, type VariantFinder, variantFinder } from './variant.ts';

export interface CoverQuestion extends VariantBook {
  /** The cards to choose from. */
  readonly cards: readonly Recipe[];
  readonly profiles: readonly Profile[];
  /** How little a variant is wanted among equally few, 0 to below 1: what the kitchen knows least comes last. */
  readonly reluctance: (variant: Variant) => number;
}

/** What one variant of the answer feeds. */
export interface CoverVariant extends Variant {
  /** Places in the question's profiles: who gets it. */
  readonly serves: readonly number[];
}

export interface Cover {
  readonly variants: readonly CoverVariant[];
  /** Places of the profiles that no card suits, with or without swaps. */
  readonly unfed: readonly number[];
  /** Places of the profiles that name a food this kitchen does not know, so that nothing can be checked. */
  readonly unchecked: readonly number[];
  /** False where so many kinds of needs came together that fewer variants may exist. */
  readonly isFewest: boolean;
}

/**
 * The fewest variants of the cards that suit every profile. Each variant is judged whole against every profile it is
 * given to. Who suits nothing is told apart, never fitted in.
 */
export async function coverProfiles(
  question: CoverQuestion,
  solver: () => Promise<LinearSolver> = linearSolver,
): Promise<Cover> {
  const { profiles, foods } = question;
  const unchecked = places(profiles, (profile) => !isCheckable(profile, foods));
  const asked = new Map<string, Profile>();
  for (const [at, profile] of profiles.entries())
    if (!unchecked.includes(at)) asked.set(profileKey(profile), profile);
  const distinct = [...asked.values()];
  const find = variantFinder(question);
  const { variants, isExact } = variantsFor(question, find, distinct);
  const fed = distinct.filter((profile) => variants.some(({ recipe }) => suits(recipe, foods, profile)));
  const sets = variants.map((variant) => ({
    variant,
    covers: places(fed, (profile) => suits(variant.recipe, foods, profile)),
    reluctance: question.reluctance(variant),
  }));
  const chosen = (await fewestSets(fed.length, sets, solver)) ?? [];
  const taken = chosen.flatMap((at) => sets[at] ?? []).sort((a, b) => a.reluctance - b.reluctance);
  return {
    variants: handedOut(question, find, taken, fed),
    unfed: places(
      profiles,
      (profile, at) =>
        !unchecked.includes(at) && !fed.some((each) => profileKey(each) === profileKey(profile)),
    ),
    unchecked,
    isFewest: isExact,
  };
}

const places = (profiles: readonly Profile[], test: (profile: Profile, at: number) => boolean): number[] =>
  profiles.flatMap((profile, at) => (test(profile, at) ? [at] : []));

/**
 * Every card as it is, and for every card the variants that suit the largest sets of profiles: whatever suits a set
 * suits its parts, so the fewest variants are among these.
 */
function variantsFor(
  question: CoverQuestion,
  find: VariantFinder,
  profiles: readonly Profile[],
): { variants: readonly Variant[]; isExact: boolean } {
  const reaches = question.cards.map((card) => reachOf(card, question.foods, question.recipes));
  const variants = new Set(question.cards.map(asOnCard));
  let hopeful = profiles;
  for (;;) {
    const widest = widestOf(hopeful);
    for (const [at, card] of question.cards.entries()) {
      const union = (members: readonly number[]) => unionOf(members.flatMap((place) => widest[place] ?? []));
      const sets = maximalSets(
        widest.length,
        (members) => find(card, union(members)) !== undefined,
        (members) => reaches[at]?.(union(members).avoid) ?? true,
      );
      for (const members of sets) {
        const variant = find(card, union(members));
        if (variant && variant.swaps.length > 0) variants.add(variant);
      }
    }
    const unfed = widest.filter(
      (profile) => ![...variants].some(({ recipe }) => suits(recipe, question.foods, profile)),
    );
    if (unfed.length === 0) return { variants: [...variants], isExact: widest.length <= MOST_EXACT };
    // Who needs less than somebody nothing suits may yet be fed: once more without the one.
    hopeful = hopeful.filter((profile) => !unfed.includes(profile));
  }
}

/** Whoever needs less than another is fed with the other, so only the widest have to be looked at. */
const widestOf = (profiles: readonly Profile[]): Profile[] =>
  profiles.filter((each) => !profiles.some((other) => other !== each && isWithin(each, other)));

/** Gives every profile the least reluctant variant that suits it, then takes back swaps nobody needs any more. */
function handedOut(
  question: CoverQuestion,
  find: VariantFinder,
  taken: readonly { readonly variant: Variant }[],
  fed: readonly Profile[],
): CoverVariant[] {
  const { profiles, foods } = question;
  const isFed = new Set(fed.map(profileKey));
  const serves = taken.map((): number[] => []);
  for (const [at, profile] of profiles.entries()) {
    if (!isFed.has(profileKey(profile))) continue;
    const first = taken.findIndex(({ variant }) => suits(variant.recipe, foods, profile));
    serves[first]?.push(at);
  }
  return taken.flatMap(({ variant }, at) => {
    const served = serves[at] ?? [];
    if (served.length === 0) return [];
    const least = find(variant.card, unionOf(served.flatMap((place) => profiles[place] ?? [])));
    const kept = least && least.swaps.length < variant.swaps.length ? least : variant;
    return [{ ...kept, serves: served }];
  });
}
