import type { RosterWords } from '../../../kitchen/roster/read-roster.ts';
import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { NEEDS, type Need } from '../../../nutrition/allergens.ts';
import { isKnownAvoidedFood } from '../../../nutrition/avoided-food.ts';
import type { Book } from '../../../nutrition/book.ts';
import { findersOf } from '../../finders.ts';
import { listed, needName } from '../../need-words.ts';
import { needList, needsNamed } from '../../reading/need-list.ts';
import { vocabularyOf } from '../../reading/vocabulary.ts';

/** How the words of a roster are understood in this kitchen. */
export const rosterWords = (book: Book): RosterWords => ({
  avoided: (cell) => understood(book, needList(cell)),
  recipe: (name) => {
    const match = findersOf(book).recipes.find(name);
    return match.kind === 'found' ? match.recipe.id : undefined;
  },
});

/** Foods that go by the words told; a misspelled need is taken for the need, for that is what would hurt. */
export function understood(
  book: Book,
  { avoid, foods }: { readonly avoid: readonly Need[]; readonly foods: readonly string[] },
): ReturnType<RosterWords['avoided']> {
  const needs = new Set(avoid);
  const kept: string[] = [];
  const unknown: string[] = [];
  const readAs: [string, string][] = [];
  for (const food of foods) {
    if (isKnownAvoidedFood(book.foods.values(), food)) {
      kept.push(food);
      continue;
    }
    const corrected = food.split(' ').map(vocabularyOf(book).correct).join(' ');
    const meant = corrected === food ? [] : needsNamed(corrected);
    for (const need of meant) needs.add(need);
    if (meant.length > 0) {
      readAs.push([food, listed(meant.map(needName))]);
      continue;
    }
    kept.push(food);
    unknown.push(food);
  }
  return { avoid: NEEDS.filter((need) => needs.has(need)), foods: kept, unknown, readAs };
}

/** "peanut, animal products and kiwi", or "nothing". */
export const avoidWords = ({ avoid, foods }: Pick<PersonNeeds, 'avoid' | 'foods'>): string =>
  listed([...avoid.map(needName), ...foods]) || 'nothing';

/** "Avoids peanut. Likes Oat bars. 2 pieces." */
export function personWords(person: PersonNeeds, book: Book): string {
  const likes = person.likes.map((id) => book.recipes.get(id)?.title ?? id);
  return [
    `Avoids ${avoidWords(person)}.`,
    ...(likes.length > 0 ? [`Likes ${listed(likes)}.`] : []),
    ...(person.pieces === undefined ? [] : [`${person.pieces} ${person.pieces === 1 ? 'piece' : 'pieces'}.`]),
  ].join(' ');
}

export const personData = (person: PersonNeeds): Record<string, unknown> => ({
  code: person.code,
  avoid: person.avoid,
  foods: person.foods,
  likes: person.likes,
  pieces: person.pieces ?? null,
});
