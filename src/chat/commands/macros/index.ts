import { NUTRIENTS, type NutrientKey } from '../../../nutrition/nutrients.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answer } from '../../answer.ts';
import { cardMeant, saidFirst } from '../../card-meant.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { foodCalled } from '../../find-food.ts';
import { findersOf } from '../../finders.ts';
import { needsOf } from '../../need-words.ts';
import { ownProduct } from '../../own-product.ts';
import { energyNotShown, seesEnergy, shownTo, whereEnergyIs } from '../../quiet-numbers.ts';
import type { Slots } from '../../slots.ts';
import { whenUnsure } from '../allergens/unsure-name.ts';
import { figuresAnswer } from './answer-figures.ts';
import { basisOf } from './basis.ts';
import { compareAnswer, type Side } from './compare-answer.ts';
import { nutrientOf } from './figure-words.ts';
import { macrosHead } from './head.ts';
import { labelAnswer } from './label-answer.ts';
import { recipeSubject, resolveName, resolveSubject } from './resolve-subject.ts';
import { withSeveralFoods } from './several-foods.ts';
import { itemLine, slotList, slotNumber, slotTargets, slotText } from './slot-values.ts';
import type { Subject } from './subject.ts';
import { targetKey } from './targets.ts';
import { withTypedList } from './typed-list.ts';

const USUAL: readonly NutrientKey[] = [
  'energyKcal',
  'proteinG',
  'carbohydrateG',
  'fatG',
  'fiberG',
  'sugarsG',
  'sodiumMg',
];

/** `macros`: what a piece, 100 g, a batch, a food or a typed list holds, how sure that is, and from where. */
export const macros: Command = {
  ...macrosHead,
  async answers(asked) {
    const { foods } = findersOf(asked.kitchen.book);
    const unsure = unsureLabel(asked);
    if (unsure) return unsure;
    const typed = withTypedList(withOwnPackage(asked), asked.request.text, foods);
    const slots = withWhatWasSaid(withSeveralFoods(typed, asked), asked);
    const keys = wantedKeys(slots);
    const { request } = asked;
    const { settings } = asked.kitchen.book;
    const shown = shownTo(keys, request, settings);
    if (shown.length === 0 && slots.compare !== undefined) {
      return answered(bothWithoutEnergy(slots, asked), slots);
    }
    if (slots.compare !== undefined) return answered(compared(slots, asked, shown), slots);
    const resolved = resolveSubject(slots, asked.kitchen.book);
    if (!resolved) return whichOne(slots, asked);
    if ('between' in resolved) return whichOf(resolved.between, slots, asked);
    const needs = needsOf(slots.avoid);
    const whole = resolved.subject;
    const meant = whole.recipe ? cardMeant(asked.kitchen.book, whole.recipe, needs) : undefined;
    const subject =
      meant?.offer && whole.recipe ? recipeSubject(meant.card, slots, asked.kitchen.book) : whole;
    const told = (answer: Answer) =>
      meant?.note === undefined ? answer : saidFirst(answer, needs, [meant.note], meant.offer);
    if (shown.length === 0) return answered(energyNotShown(request, settings, subject.title), slots, subject);
    return answered(told(answerFor(subject, slots, asked, shown)), slots, subject);
  },
};

/** A label is put on a package: it is made for a name that is exactly one of the kitchen's, or for a typed list. */
function unsureLabel(asked: Asked): Answered | undefined {
  const { slots, request, kitchen } = asked;
  const isOne = slots.recipe !== undefined || slots.ingredient !== undefined;
  if (slots.output !== 'label' || !isOne || slots.items !== undefined) return undefined;
  const { items } = withTypedList(slots, request.text, findersOf(kitchen.book).foods);
  return items === undefined ? whenUnsure(asked, 'macros', []) : undefined;
}

/** "Nutrition label hummus" is about the package this kitchen buys, where it has one. */
function withOwnPackage({ slots, kitchen: { book } }: Asked): Slots {
  const food =
    slots.output === 'label' && slots.recipe === undefined
      ? foodCalled(book, String(slots.ingredient))
      : undefined;
  const own = food && ownProduct(book, food);
  return own ? { ...slots, ingredient: own.id } : slots;
}

/** A request that leans on the last one: "cut into 10", "label", "sodium?". */
function withWhatWasSaid(slots: Slots, { conversation }: Asked): Slots {
  const names = ['recipe', 'ingredient', 'items', 'compare'];
  if (names.some((name) => slots[name] !== undefined)) return slots;
  const last = conversation.last?.intent === 'macros' ? conversation.last.slots : undefined;
  if (last && names.some((name) => last[name] !== undefined)) {
    const {
      nutrient: _nutrient,
      target: _target,
      output: _output,
      per: _per,
      pieces_was: _was,
      ...about
    } = last;
    return { ...about, ...slots };
  }
  return conversation.recipeId === undefined ? slots : { ...slots, recipe: conversation.recipeId };
}

function wantedKeys(slots: Slots): readonly NutrientKey[] {
  const said = slotList(slots, 'nutrient').map(String);
  const targets = slotTargets(slots).map(targetKey);
  const keys = said.map((word) => nutrientOf(word) ?? unknownNutrient(word));
  const all = [...new Set([...keys, ...targets])];
  return all.length > 0 ? all : USUAL;
}

function unknownNutrient(word: string): never {
  const names = NUTRIENTS.map((nutrient) => nutrient.name).join(', ');
  throw new Problem('bad_option', `There are no figures for "${word}".`, `Ask for one of ${names}.`);
}

const isNamed = (slots: Slots): boolean => slots.nutrient !== undefined || slotTargets(slots).length > 0;

function answerFor(subject: Subject, slots: Slots, asked: Asked, keys: readonly NutrientKey[]): Answer {
  const { book } = asked.kitchen;
  const basis = basisOf(subject, slots);
  const was = slotNumber(slots, 'pieces_was');
  if (was !== undefined && was !== subject.pieces && slots.output === undefined) {
    return cutsBeside(subject, was, slots, asked, keys);
  }
  const energyShown = seesEnergy(asked.request, book.settings);
  const elsewhere = whereEnergyIs(asked.request, book.settings);
  const asking = { subject, basis, keys, named: isNamed(slots), energyShown, elsewhere, slots, book };
  return slotText(slots, 'output') === 'label' ? labelAnswer(asking) : figuresAnswer(asking);
}

/** "cut into 10 instead of 8": both cuts side by side. */
function cutsBeside(
  subject: Subject,
  was: number,
  slots: Slots,
  { kitchen }: Asked,
  keys: readonly NutrientKey[],
): Answer {
  const before = resolveSubject({ ...slots, pieces: was }, kitchen.book);
  const sides = [before && 'subject' in before ? before.subject : subject, subject].map((cut) => ({
    subject: cut,
    basis: basisOf(cut, slots),
    name: `cut into ${cut.pieces}`,
    after: `of ${cut.title} cut into ${cut.pieces}`,
  }));
  return compareAnswer(sides, leadingWithProtein(keys));
}

function bothWithoutEnergy(slots: Slots, { request, kitchen: { book } }: Asked): Answer {
  const names = slotList(slots, 'compare').map(
    (name) => book.recipes.get(String(name))?.title ?? itemLine(name),
  );
  const both = names.join(' and ');
  return energyNotShown(request, book.settings, both, `compare ${both}`);
}

function compared(slots: Slots, { kitchen }: Asked, keys: readonly NutrientKey[]): Answer {
  const names = slotList(slots, 'compare').map(itemLine);
  if (names.length < 2)
    throw new Problem('needs_more', 'Compare needs two.', 'Write it like "compare oat bar and cherry bar".');
  const subjects = names.map((name) => sideNamed(name, kitchen.book));
  // Foods without an amount are set side by side by equal weight; a medium fruit beside a cup of milk says little.
  const per = slots.per ?? (subjects.every((subject) => subject.recipe) ? 'piece' : '100g');
  const sides: Side[] = subjects.map((subject) => ({
    subject,
    basis: basisOf(subject, { per }),
    name: subject.title,
    after: `of ${subject.title}`,
  }));
  return compareAnswer(sides, leadingWithProtein(keys));
}

function sideNamed(name: string, book: Asked['kitchen']['book']): Subject {
  const resolved = resolveName(name, book);
  if ('subject' in resolved) return resolved.subject;
  const titles = resolved.between.map((recipe) => recipe.title).join(', ');
  throw new Problem('ambiguous', `"${name}" may be several recipes.`, `Write one of ${titles}.`);
}

const leadingWithProtein = (keys: readonly NutrientKey[]): readonly NutrientKey[] =>
  keys.includes('proteinG') ? ['proteinG', ...keys.filter((key) => key !== 'proteinG')] : keys;

function answered(answer: Answer, slots: Slots, subject?: Subject): Answered {
  const recipeId = subject?.recipe?.id;
  const said = recipeId === undefined ? slots : { ...slots, recipe: recipeId };
  return {
    answer,
    conversation: {
      last: { intent: 'macros', slots: said },
      ...(recipeId !== undefined && { recipeId }),
    },
  };
}

function whichOne(slots: Slots, { kitchen, conversation }: Asked): Answered {
  const recipes = [...kitchen.book.recipes.values()].slice(0, 3);
  return asks('Of which recipe or food?', recipes, slots, conversation);
}

function whichOf(recipes: readonly Recipe[], slots: Slots, { conversation }: Asked): Answered {
  const titles = recipes.slice(0, 3).map((recipe) => recipe.title);
  return asks(`Which one: ${titles.join(' or ')}?`, recipes.slice(0, 3), slots, conversation);
}

function asks(
  title: string,
  recipes: readonly Recipe[],
  slots: Slots,
  conversation: Asked['conversation'],
): Answered {
  const options = recipes.map((recipe) => recipe.title);
  return {
    answer: {
      title,
      sections: [],
      cautions: [],
      next: options.map((option) => ({ label: option, says: `macros ${option}` })),
      audience: 'channel',
      data: { question: 'recipe', options },
    },
    conversation: {
      ...conversation,
      question: { slot: 'recipe', options, reading: { intent: 'macros', slots } },
    },
  };
}
