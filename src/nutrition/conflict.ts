import { isListedTreeNut } from './allergen-list.ts';
import type { Allergen, AllergenMark, Need } from './allergens.ts';
import type { Food } from './food.ts';
import { isOats, isPlain, isUnlabelledGrain, lecithin, mayHide, refinedOilSource } from './food-nature.ts';

/**
 * How a food stands to a need. `ask`: a label, or the person's doctor, has to be asked first.
 * `clear_by_label`: nothing speaks against it on its label or in its kind; never a promise.
 */
export type Verdict = 'conflict' | 'advisory' | 'ask' | 'clear_by_label';

/** Why, for the one line an answer gives. */
export type Because =
  | 'contains'
  | 'advisory_statement'
  | 'label_not_read'
  | 'off_the_list'
  | 'may_cross_react'
  | 'highly_refined_oil'
  | 'lecithin_source'
  | 'oats_not_labelled'
  | 'grain_not_labelled'
  | 'low_lactose'
  | 'gelatin_source'
  | 'nothing_found';

export interface Judgement {
  readonly verdict: Verdict;
  readonly because: Because;
  readonly species?: string;
}

const CLEAR: Judgement = { verdict: 'clear_by_label', because: 'nothing_found' };
const UNREAD: Judgement = { verdict: 'ask', because: 'label_not_read' };
const CONTAINS: Judgement = { verdict: 'conflict', because: 'contains' };

/**
 * Judges one food against one need.
 * @example conflictsWith(peanutButter, 'peanut') // 'conflict'
 */
export function conflictsWith(food: Food, need: Need): Verdict {
  return judge(food, need).verdict;
}

/** As `conflictsWith`, with the reason and the species. */
export function judge(food: Food, need: Need): Judgement {
  switch (need) {
    case 'gluten':
      return judgeGluten(food);
    case 'lactose':
      return judgeLactose(food);
    case 'animal':
      return judgeAnimal(food);
    case 'meat':
      return food.meat || food.pork || !food.vegetarian ? CONTAINS : unlessUnread(food, !isPlain(food));
    case 'pork':
      return judgePork(food);
    case 'added_sugar':
      return judgeAddedSugar(food);
    default:
      return judgeAllergen(food, need);
  }
}

const named = (base: Judgement, mark: AllergenMark): Judgement =>
  mark.species === undefined ? base : { ...base, species: mark.species };

const unlessUnread = (food: Food, doubtful: boolean): Judgement =>
  food.allergenBasis === 'kind' && doubtful ? UNREAD : CLEAR;

/** A person who avoids tree nuts avoids every nut on either list; a nut on neither is asked about. */
const isAvoidedNut = (mark: AllergenMark): boolean =>
  isListedTreeNut(mark.species, 'us') || isListedTreeNut(mark.species, 'eu');

function judgeAllergen(food: Food, need: Need & Allergen): Judgement {
  const holds = food.contains.find((m) => m.allergen === need && (need !== 'tree_nut' || isAvoidedNut(m)));
  if (holds) return named(CONTAINS, holds);
  if (need === 'soy' && lecithin(food) === 'soy') return { ...CONTAINS, species: 'soy lecithin' };
  const advised = food.advisory.find((m) => m.allergen === need);
  if (advised) return named({ verdict: 'advisory', because: 'advisory_statement' }, advised);
  const asked = askedFor(food, need);
  if (asked) return asked;
  return mayHide(food, need) ? UNREAD : CLEAR;
}

/** Off-list relatives of an allergen, which the person's own doctor decides on. */
function askedFor(food: Food, need: Allergen): Judgement | undefined {
  const marks = [...food.contains, ...food.advisory];
  const offList = marks.find(
    (m) => m.allergen === 'coconut' || m.allergen === 'chestnut' || m.allergen === 'tree_nut',
  );
  if (need === 'tree_nut' && offList)
    return { verdict: 'ask', because: 'off_the_list', species: offList.species ?? offList.allergen };
  const mollusc = marks.find((m) => m.allergen === 'mollusc');
  if (need === 'shellfish' && mollusc) return named({ verdict: 'ask', because: 'off_the_list' }, mollusc);
  if (need === 'peanut' && marks.some((m) => m.allergen === 'lupin'))
    return { verdict: 'ask', because: 'may_cross_react', species: 'lupin' };
  if (refinedOilSource(food) === need) return { verdict: 'ask', because: 'highly_refined_oil' };
  if (need === 'soy' && lecithin(food) === 'unnamed') return { verdict: 'ask', because: 'lecithin_source' };
  return undefined;
}

function judgeGluten(food: Food): Judgement {
  if (food.gluten === 'contains') return CONTAINS;
  const advised = food.advisory.find((m) => m.allergen === 'wheat' || m.allergen === 'gluten_cereal');
  if (food.gluten === 'labelled_gluten_free')
    return advised ? named({ verdict: 'advisory', because: 'advisory_statement' }, advised) : CLEAR;
  if (isOats(food)) return { verdict: 'conflict', because: 'oats_not_labelled' };
  const wheat = food.contains.find((m) => m.allergen === 'wheat' || m.allergen === 'gluten_cereal');
  if (wheat) return named(CONTAINS, wheat);
  if (advised) return named({ verdict: 'advisory', because: 'advisory_statement' }, advised);
  if (isUnlabelledGrain(food)) return { verdict: 'ask', because: 'grain_not_labelled' };
  return mayHide(food, 'gluten_cereal') ? UNREAD : CLEAR;
}

/** Lactose intolerance is about an amount of milk sugar; a milk allergy is about its protein. Never merged. */
function judgeLactose(food: Food): Judgement {
  if (food.lactose === 'contains') return CONTAINS;
  const advised = food.advisory.find((m) => m.allergen === 'milk');
  if (advised) return named({ verdict: 'advisory', because: 'advisory_statement' }, advised);
  if (food.lactose === 'low') return { verdict: 'ask', because: 'low_lactose' };
  return mayHide(food, 'milk') ? UNREAD : CLEAR;
}

const OF_ANIMALS: readonly Allergen[] = ['milk', 'egg', 'fish', 'shellfish', 'mollusc'];

function judgeAnimal(food: Food): Judgement {
  const mark = food.contains.find((m) => OF_ANIMALS.includes(m.allergen));
  if (mark) return named(CONTAINS, mark);
  return food.vegan ? unlessUnread(food, !isPlain(food)) : CONTAINS;
}

function judgePork(food: Food): Judgement {
  if (food.pork) return CONTAINS;
  const words = `${food.name} ${food.product?.ingredientsStatement ?? ''}`;
  if (!food.vegetarian && /gelatin|marshmallow|gumm/i.test(words))
    return { verdict: 'ask', because: 'gelatin_source' };
  return unlessUnread(food, !isPlain(food) && !food.vegetarian);
}

/** Sugars, syrups and honey count as added once in a recipe (21 CFR 101.9(c)(6)(iii)); whole fruit does not. */
function judgeAddedSugar(food: Food): Judgement {
  const added = food.per100g.addedSugarsG;
  if (added !== undefined) return added > 0 ? CONTAINS : CLEAR;
  const isFruit = /fruit/i.test(food.group);
  const words = food.name.toLowerCase().replace(/unsweetened|no added sugar/g, '');
  if (/sweetened|syrup|sugar|honey|jam\b|preserve|agave|candied/.test(words)) return CONTAINS;
  if (food.roles.includes('sweetener') && !isFruit && (food.per100g.sugarsG ?? 1) > 0) return CONTAINS;
  return isPlain(food) || food.per100g.sugarsG === 0 ? CLEAR : { verdict: 'ask', because: 'label_not_read' };
}
