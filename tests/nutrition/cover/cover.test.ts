import fc from 'fast-check';
import { expect, test } from 'vitest';
import { NEEDS } from '../../../src/nutrition/allergens.ts';
import { judgeAvoidedFood } from '../../../src/nutrition/avoided-food.ts';
import { conflictsWith } from '../../../src/nutrition/conflict.ts';
import { coverProfiles } from '../../../src/nutrition/cover/cover.ts';
import { type Profile, unionOf } from '../../../src/nutrition/cover/profile.ts';
import { findSwaps } from '../../../src/nutrition/swap/find-swaps.ts';
import { recipeFoods } from '../../../src/nutrition/swap/offer.ts';
import { openKitchen } from '../../../src/open-kitchen.ts';

const { book } = await openKitchen({ nowMs: () => 0 });
const all = [...book.recipes.values()];
const base = {
  foods: book.foods,
  recipes: book.recipes,
  list: 'us' as const,
  reluctance: ({ swaps }: { swaps: readonly unknown[] }) => swaps.length / 100,
};
const COMMON = NEEDS.slice(0, 15);
const profile = fc.record({
  avoid: fc.uniqueArray(fc.constantFrom(...COMMON), { maxLength: 4 }),
  foods: fc.uniqueArray(fc.constantFrom('kiwi', 'banana', 'cinnamon', 'raisin', 'oats', 'nosuchfood'), {
    maxLength: 1,
  }),
});

test('every plan feeds everybody by the allergen engine, food by food, or says whom it does not', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(profile, { minLength: 1, maxLength: 9 }), async (profiles) => {
      const cover = await coverProfiles({ ...base, cards: all, profiles });
      const fed = cover.variants.flatMap(({ serves }) => serves);
      const told = [...fed, ...cover.unfed, ...cover.unchecked].sort((a, b) => a - b);
      expect(told).toEqual([...profiles.keys()]);
      for (const { recipe, serves } of cover.variants) {
        for (const at of serves) {
          for (const food of recipeFoods(recipe, book.foods)) {
            for (const need of profiles[at]?.avoid ?? [])
              expect(conflictsWith(food, need)).toBe('clear_by_label');
            for (const word of profiles[at]?.foods ?? [])
              expect(judgeAvoidedFood(food, word)).toBe('clear_by_label');
          }
        }
      }
    }),
    { numRuns: 25 },
  );
});

/** Whether a card suits all these, asked of the swap engine directly. */
function feeds(at: number, profiles: readonly Profile[]): boolean {
  const card = all[at];
  if (!card) return false;
  const { avoid } = unionOf(profiles);
  const found = findSwaps({
    recipe: card,
    foods: book.foods,
    recipes: book.recipes,
    needs: avoid,
    list: 'us',
  });
  return found.nothingToSwap || found.offers.length > 0;
}

/** The fewest groups that one card each can feed, by trying every way to group the people. */
function fewestByTrying(cards: readonly number[], profiles: readonly Profile[]): number | undefined {
  const known = new Map<string, boolean>();
  const suitsSome = (group: readonly Profile[]): boolean => {
    const key = unionOf(group).avoid.join();
    const before = known.get(key) ?? cards.some((at) => feeds(at, group));
    known.set(key, before);
    return before;
  };
  let best: number | undefined;
  const place = (at: number, groups: readonly (readonly Profile[])[]): void => {
    if (best !== undefined && groups.length >= best) return;
    const next = profiles[at];
    if (!next) {
      if (groups.every(suitsSome)) best = groups.length;
      return;
    }
    for (const [i, group] of groups.entries())
      place(
        at + 1,
        groups.map((each, j) => (i === j ? [...group, next] : each)),
      );
    place(at + 1, [...groups, [next]]);
  };
  place(0, []);
  return best;
}

test('as few variants as an exhaustive search over groupings, swaps and 12 cards finds', async () => {
  // Cards that cannot be made to suit many needs, so that one variant is often not enough.
  const hard = ['egg-potato-squares', 'turkey-hummus-rolls', 'travel-trail-mix', 'seed-trail-mix'];
  const order = [...all.keys()].sort(
    (a, b) => Number(hard.includes(all[b]?.id ?? '')) - Number(hard.includes(all[a]?.id ?? '')),
  );
  const people = fc.array(
    fc.record({
      avoid: fc.uniqueArray(fc.constantFrom(...COMMON.slice(0, 8)), { minLength: 1, maxLength: 3 }),
      foods: fc.constant([] as string[]),
    }),
    { minLength: 2, maxLength: 5 },
  );
  await fc.assert(
    fc.asyncProperty(people, fc.integer({ min: 2, max: 12 }), async (profiles, many) => {
      const cards = order.slice(0, many);
      const cover = await coverProfiles({ ...base, cards: cards.flatMap((at) => all[at] ?? []), profiles });
      const fed = profiles.filter((_, at) => !cover.unfed.includes(at));
      expect(cover.unfed.every((at) => cards.every((card) => !feeds(card, [profiles[at] as Profile])))).toBe(
        true,
      );
      expect(cover.variants.length).toBe(fewestByTrying(cards, fed) ?? 0);
    }),
    { numRuns: 20 },
  );
});

test('who needs less than somebody nothing suits is fed all the same', async () => {
  const cards = all.filter(({ id }) => id === 'egg-potato-squares');
  const profiles = [
    { avoid: ['egg', 'peanut'], foods: [] },
    { avoid: ['peanut'], foods: [] },
    { avoid: [], foods: [] },
  ] as const;
  const cover = await coverProfiles({ ...base, cards, profiles });
  expect(cover.unfed).toEqual([0]);
  expect(cover.variants.map(({ serves }) => serves)).toEqual([[1, 2]]);
});
