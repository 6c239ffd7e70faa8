import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { NEEDS } from '../../../nutrition/allergens.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { needName } from '../../need-words.ts';
import { contradictions } from './contradictions.ts';
import { codeMeant, personMeant, rosterOf } from './who.ts';
import { personData, personWords } from './words.ts';

/** More than this is a list to load, not an answer to read. */
const MOST_SHOWN = 60;

/** "show my needs", "needs of WP-07". */
export async function showPerson(asked: Asked): Promise<Answered> {
  const person = await personMeant(asked);
  if (!person) throw nothingKnown(asked);
  const { book } = asked.kitchen;
  const clash = contradictions(person, book);
  return {
    answer: {
      title: `${person.code}: ${personWords(person, book)}`,
      sections:
        clash.length > 0 ? [{ kind: 'list', heading: 'These contradict each other', items: clash }] : [],
      cautions: ['Only the person and the staff see this.'],
      next: [],
      audience: 'asker',
      data: { ...personData(person), contradictions: clash },
    },
  };
}

/** "roster": how many avoid what; staff also see who. */
export async function showRoster(asked: Asked): Promise<Answered> {
  const people = await rosterOf(asked).all();
  const { role } = asked.request.asker;
  const isStaff = role === 'staff';
  if (!isStaff && role !== 'intern')
    throw new Problem('not_allowed', 'The roster is for kitchen staff.', 'For your own, "show my needs".');
  const counts = countsOf(people);
  const needing = people.filter(({ avoid, foods }) => avoid.length + foods.length > 0);
  return {
    answer: {
      title: `${people.length} on the roster, ${needing.length} with needs.`,
      sections: [
        ...(counts.length > 0
          ? [
              {
                kind: 'table',
                heading: 'How many avoid',
                columns: [
                  { name: 'What', align: 'left' },
                  { name: 'People', align: 'right' },
                ],
                rows: counts.map(([what, count]) => [what, String(count)]),
              } as const,
            ]
          : []),
        ...(isStaff && needing.length > 0
          ? [
              {
                kind: 'list',
                heading: 'Who',
                items: [
                  ...needing
                    .slice(0, MOST_SHOWN)
                    .map((p) => `${p.code}: ${personWords(p, asked.kitchen.book)}`),
                  ...(needing.length > MOST_SHOWN
                    ? [`and ${needing.length - MOST_SHOWN} more: ask "needs of ${needing[MOST_SHOWN]?.code}"`]
                    : []),
                ],
              } as const,
            ]
          : []),
      ],
      cautions: isStaff ? ['Who needs what is for staff only; share counts.'] : [],
      next:
        people.length === 0
          ? [{ label: 'import roster.csv', says: 'import roster.csv' }]
          : [{ label: 'plan Saturday', says: 'plan saturday' }],
      audience: 'asker',
      data: {
        people: people.length,
        withNeeds: needing.length,
        counts: Object.fromEntries(counts),
        ...(isStaff ? { needs: needing.map(personData) } : {}),
      },
    },
  };
}

function countsOf(people: readonly PersonNeeds[]): [what: string, people: number][] {
  const foods = [...new Set(people.flatMap((person) => person.foods))].sort();
  return [
    ...NEEDS.map((need): [string, number] => [
      needName(need),
      people.filter(({ avoid }) => avoid.includes(need)).length,
    ]),
    ...foods.map((food): [string, number] => [food, people.filter((p) => p.foods.includes(food)).length]),
  ].filter(([, count]) => count > 0);
}

export function nothingKnown(asked: Asked): Problem {
  const isOwn = asked.slots.who === 'me';
  return new Problem(
    'not_found',
    isOwn ? 'No needs of yours are kept.' : `Nothing is kept of ${codeMeant(asked)}.`,
    isOwn
      ? 'Write them, like "my needs: peanut, vegan".'
      : `Write them, like "${codeMeant(asked)} needs: peanut, vegan".`,
  );
}
