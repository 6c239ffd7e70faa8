import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import type { Need } from '../../../nutrition/allergens.ts';
import { recipeVerdict } from '../../../nutrition/meets-needs.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { CROSS_CONTACT, listed, needName } from '../../need-words.ts';
import { isSeveral, recipesMeant } from '../../which-recipe.ts';
import { rosterOf } from './who.ts';
import { avoidWords } from './words.ts';

/** "who on the roster can't have peanut", "can everyone eat the oat bars": counts; staff also see who. */
export async function teamAnswer(asked: Asked, needs: readonly Need[]): Promise<Answer | undefined> {
  const { role } = asked.request.asker;
  if (role !== 'staff' && role !== 'intern') return undefined;
  const people = await rosterOf(asked).all();
  if (people.length === 0) return undefined;
  const recipe = asked.slots.recipe === undefined ? undefined : await recipesMeant(asked);
  const named = recipe && !isSeveral(recipe) ? recipe : undefined;
  if (!named && needs.length === 0) return undefined;
  const found = people.filter((person) =>
    named ? !isClearFor(asked, named, person) : person.avoid.some((need) => needs.includes(need)),
  );
  const title = named
    ? `${named.title} as on the card are not for ${found.length} of ${people.length} on the roster.`
    : `${found.length} of ${people.length} on the roster avoid ${listed(needs.map(needName), 'or')}.`;
  return {
    title,
    sections:
      role === 'staff' && found.length > 0
        ? [{ kind: 'list', heading: 'Who', items: found.map((p) => `${p.code}: avoids ${avoidWords(p)}`) }]
        : [],
    cautions: [
      CROSS_CONTACT,
      ...(role === 'staff' ? ['Who needs what is for staff only; share counts.'] : []),
    ],
    next: [{ label: 'plan Saturday', says: 'plan saturday' }],
    audience: 'asker',
    data: {
      people: people.length,
      avoiding: found.length,
      ...(named ? { recipe: named.id } : { avoid: needs }),
      ...(role === 'staff' ? { codes: found.map(({ code }) => code) } : {}),
    },
  };
}

const isClearFor = ({ kitchen: { book } }: Asked, recipe: Recipe, { avoid, foods }: PersonNeeds): boolean =>
  recipeVerdict(recipe, book.foods, avoid, foods) === 'clear_by_label';
