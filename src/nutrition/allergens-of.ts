import { type AllergenList, allergensOnList, onList } from './allergen-list.ts';
import { type Allergen, type AllergenMark, UNLISTED_CONCERNS } from './allergens.ts';
import { judge } from './conflict.ts';
import type { Food } from './food.ts';
import { isOats, isUnlabelledGrain, lecithin, mayHide, refinedOilSource } from './food-nature.ts';

/** Through which ingredient, and which species of it. */
export interface Through {
  readonly foodId: string;
  readonly foodName: string;
  readonly species?: string;
}

/** `not_known`: some label has to be read first. `not_listed`: not on the ingredients as known; no promise. */
export type AllergenStatus = 'contains' | 'advisory' | 'not_known' | 'not_listed';

export interface AllergenFinding {
  readonly allergen: Allergen;
  readonly status: AllergenStatus;
  readonly contains: readonly Through[];
  readonly advisory: readonly Through[];
  /** Ingredients in which it may hide because their label has not been read. */
  readonly unread: readonly Through[];
}

/** Something on no list of this kitchen that some people still avoid: ask the person. */
export interface UnlistedConcern {
  readonly concern: string;
  readonly through: readonly Through[];
}

export type GlutenFinding =
  | 'contains'
  | 'advisory'
  | 'oats_not_labelled'
  | 'grain_not_labelled'
  | 'not_known'
  | 'only_labelled_grains'
  | 'no_gluten_grain';

export interface Graded<Grade extends string> {
  readonly status: Grade;
  readonly through: readonly Through[];
}

export interface AllergenReport {
  readonly list: AllergenList;
  readonly findings: readonly AllergenFinding[];
  readonly unlisted: readonly UnlistedConcern[];
  readonly gluten: Graded<GlutenFinding>;
  readonly lactose: Graded<'contains' | 'low' | 'not_known' | 'none'>;
  readonly vegan: Graded<'yes' | 'no' | 'not_known'>;
  readonly vegetarian: Graded<'yes' | 'no' | 'not_known'>;
  /** Highly refined oils of an allergenic source: not a major allergen, shown so that people can decide. */
  readonly refinedOils: readonly (Through & { readonly source: Allergen })[];
  /** Oats labelled gluten-free: a few people with coeliac disease react to oats themselves. */
  readonly labelledOats: readonly Through[];
  /** Foods known by kind only, whose package has not been read. */
  readonly labelsToRead: readonly Through[];
  /** What the kitchen's own boards, bowls and air may add is never known here. */
  readonly crossContact: 'not_checked';
}

const through = (food: Food, species?: string): Through => ({
  foodId: food.id,
  foodName: food.name,
  ...(species === undefined ? {} : { species }),
});

/**
 * Allergens of a set of foods, for every allergen on the list, and through which food.
 * @example allergensOf([peanutButter], 'us').findings.find((f) => f.allergen === 'peanut')?.status // 'contains'
 */
export function allergensOf(foods: readonly Food[], list: AllergenList): AllergenReport {
  const each = [...new Map(foods.map((food) => [food.id, food])).values()];
  return {
    list,
    findings: allergensOnList(list).map((allergen) => findingOf(each, allergen, list)),
    unlisted: unlistedIn(each, list),
    gluten: glutenOf(each),
    lactose: lactoseOf(each),
    vegan: dietOf(each, 'animal'),
    vegetarian: dietOf(each, 'meat'),
    refinedOils: each.flatMap((food) => {
      const source = refinedOilSource(food);
      return source === undefined ? [] : [{ ...through(food), source }];
    }),
    labelledOats: each
      .filter((food) => isOats(food) && food.gluten === 'labelled_gluten_free')
      .map((f) => through(f)),
    labelsToRead: each.filter((food) => food.allergenBasis === 'kind').map((f) => through(f)),
    crossContact: 'not_checked',
  };
}

function findingOf(foods: readonly Food[], allergen: Allergen, list: AllergenList): AllergenFinding {
  const contains = foods.flatMap((food) => holdings(food, allergen, list));
  const advisory = foods.flatMap((food) =>
    food.advisory.filter((m) => onList(m, list) === allergen).map((m) => through(food, m.species)),
  );
  const unread = foods
    .filter(
      (food) =>
        !food.contains.some((m) => onList(m, list) === allergen) &&
        (mayHide(food, allergen) || (allergen === 'soy' && lecithin(food) === 'unnamed')),
    )
    .map((f) => through(f));
  const status: AllergenStatus =
    contains.length > 0
      ? 'contains'
      : advisory.length > 0
        ? 'advisory'
        : unread.length > 0
          ? 'not_known'
          : 'not_listed';
  return { allergen, status, contains, advisory, unread };
}

function holdings(food: Food, allergen: Allergen, list: AllergenList): Through[] {
  const marks = food.contains.filter((m) => onList(m, list) === allergen);
  if (marks.length > 0) return marks.map((m) => through(food, m.species));
  if (allergen === 'soy' && lecithin(food) === 'soy') return [through(food, 'soy lecithin')];
  // Annex II counts oats among the gluten cereals, whatever their label says.
  if (allergen === 'gluten_cereal' && isOats(food)) return [through(food, 'oats')];
  return allergen === 'gluten_cereal' && food.gluten === 'contains' ? [through(food)] : [];
}

function unlistedIn(foods: readonly Food[], list: AllergenList): UnlistedConcern[] {
  const byConcern = new Map<string, Through[]>();
  for (const food of foods) {
    for (const mark of [...food.contains, ...food.advisory].filter((m) => isUnlisted(m, list))) {
      const concern = mark.allergen === 'tree_nut' ? (mark.species ?? 'nut') : mark.allergen;
      const found = byConcern.get(concern) ?? [];
      if (!found.some((t) => t.foodId === food.id)) found.push(through(food, mark.species));
      byConcern.set(concern, found);
    }
  }
  return [...byConcern].map(([concern, found]) => ({ concern, through: found }));
}

/** Cereals with gluten have their own line in every report, so a US kitchen is not told of them twice. */
const isUnlisted = (mark: AllergenMark, list: AllergenList): boolean =>
  mark.allergen !== 'gluten_cereal' &&
  ((UNLISTED_CONCERNS as readonly string[]).includes(mark.allergen) || onList(mark, list) === undefined);

function glutenOf(foods: readonly Food[]): Graded<GlutenFinding> {
  const judged = foods.map((food) => ({ food, ...judge(food, 'gluten') }));
  const pick = (test: (j: (typeof judged)[number]) => boolean) =>
    judged.filter(test).map((j) => through(j.food, j.species));
  const grades: readonly (readonly [GlutenFinding, readonly Through[]])[] = [
    ['contains', pick((j) => j.because === 'contains')],
    ['oats_not_labelled', pick((j) => j.because === 'oats_not_labelled')],
    ['advisory', pick((j) => j.verdict === 'advisory')],
    ['grain_not_labelled', pick((j) => isUnlabelledGrain(j.food))],
    ['not_known', pick((j) => j.verdict === 'ask')],
    ['only_labelled_grains', pick((j) => j.food.gluten === 'labelled_gluten_free')],
  ];
  const found = grades.find(([, by]) => by.length > 0);
  return found ? { status: found[0], through: found[1] } : { status: 'no_gluten_grain', through: [] };
}

function lactoseOf(foods: readonly Food[]): AllergenReport['lactose'] {
  const of = (status: Food['lactose']) => foods.filter((f) => f.lactose === status).map((f) => through(f));
  const contains = of('contains');
  if (contains.length > 0) return { status: 'contains', through: contains };
  const low = of('low');
  if (low.length > 0) return { status: 'low', through: low };
  const unread = foods.filter((f) => judge(f, 'lactose').verdict !== 'clear_by_label').map((f) => through(f));
  return unread.length > 0 ? { status: 'not_known', through: unread } : { status: 'none', through: [] };
}

function dietOf(foods: readonly Food[], need: 'animal' | 'meat'): AllergenReport['vegan'] {
  const judged = foods.map((food) => ({ food, verdict: judge(food, need).verdict }));
  const against = judged.filter((j) => j.verdict === 'conflict').map((j) => through(j.food));
  if (against.length > 0) return { status: 'no', through: against };
  const unread = judged.filter((j) => j.verdict === 'ask').map((j) => through(j.food));
  return unread.length > 0 ? { status: 'not_known', through: unread } : { status: 'yes', through: [] };
}
