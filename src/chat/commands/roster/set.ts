import { pieceProblem } from '../../../kitchen/roster/codes.ts';
import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { recipesMeeting } from '../../../nutrition/meets-needs.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Section } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { isAllergy, needsOf, reactionCaution, widerThanPork } from '../../need-words.ts';
import { changedNeeds, droppedText, keptText } from './changed-needs.ts';
import { contradictions } from './contradictions.ts';
import { codeMeant, rosterOf } from './who.ts';
import { avoidWords, personData, personWords, rosterWords, understood } from './words.ts';

const texts = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];

/**
 * "my needs: peanut, vegan" adds to what is kept of the person: what stood there goes only when that is plainly asked,
 * by "my needs are only milk", "my needs: none" or "remove peanut from my needs".
 */
export async function setNeeds(asked: Asked): Promise<Answered> {
  const { slots, kitchen, request } = asked;
  const { book } = kitchen;
  const roster = rosterOf(asked);
  const code = codeMeant(asked);
  const before = await roster.get(code);
  const { avoid, foods, unknown } = understood(book, {
    avoid: needsOf(slots.avoid),
    foods: texts(slots.foods),
  });
  const likes = texts(slots.likes).map((name) => ({ name, id: rosterWords(book).recipe(name) }));
  const pieces = typeof slots.pieces === 'number' ? slots.pieces : before?.pieces;
  const wrong = typeof slots.pieces === 'number' ? pieceProblem(slots.pieces) : undefined;
  if (wrong !== undefined)
    throw new Problem('bad_quantity', `Pieces: ${wrong}`, 'Write "my needs: peanut, 2 pieces".');
  const told = { avoid, foods };
  const changed = changedNeeds(before, told, slots);
  const saysAvoided = avoid.length + foods.length > 0 || slots.none === true;
  if (!saysAvoided && likes.length === 0 && slots.pieces === undefined)
    throw new Problem('needs_more', 'Which needs?', 'Write "my needs: peanut, vegan" or "my needs: none".');
  const known = likes.flatMap(({ id }) => id ?? []);
  const person: PersonNeeds = {
    code: before?.code ?? code,
    ...(before?.member === undefined ? {} : { member: before.member }),
    ...(before?.team === undefined ? {} : { team: before.team }),
    avoid: changed.avoid,
    foods: changed.foods,
    likes: likes.length > 0 ? known : (before?.likes ?? []),
    ...(pieces === undefined ? {} : { pieces }),
    toldBy: slots.who === 'me' ? 'self' : 'staff',
    updatedMs: request.nowMs,
  };
  await roster.put([person]);
  const clash = [
    ...contradictions(person, book),
    ...(slots.none === true && avoid.length + foods.length > 0
      ? [`"None" was said beside ${avoidWords(told)}. What is avoided counts.`]
      : []),
  ];
  const strange = likes.filter(({ id }) => id === undefined);
  return {
    answer: {
      title: `Noted for ${person.code}: avoids ${avoidWords(person)}.${droppedText(changed)}`,
      sections: [
        ...listOf('These contradict each other', clash),
        ...listOf('Not understood, so no plan can check it', unknown.map(unknownLine)),
        ...listOf(
          'Not a recipe here',
          strange.map(({ name }) => name),
        ),
        ...keptText(changed),
        ...(before ? [{ kind: 'text', text: `Before: ${personWords(before, book)}` } as const] : []),
        { kind: 'text', text: meeting(asked, person) },
      ],
      cautions: [
        'Only you and the staff see this; plans show counts.',
        'It is for planning. Before you eat, ask about the batch and read its label.',
        ...widerThanPork(request.text, avoid),
        ...(isAllergy(person.avoid) || person.foods.length > 0 ? [reactionCaution(book.settings)] : []),
      ],
      next:
        slots.who === 'me'
          ? ['show my needs', 'delete my needs'].map((says) => ({ label: says, says }))
          : [{ label: `needs of ${person.code}`, says: `needs of ${person.code}` }],
      audience: 'asker',
      data: { ...personData(person), unknown, contradictions: clash },
    },
  };
}

const unknownLine = (word: string): string =>
  `"${word}": write a need (peanut, nut, milk, egg, wheat, gluten, soy, sesame, fish, shellfish) or a food by its name`;

function meeting({ kitchen }: Asked, { avoid }: PersonNeeds): string {
  const { recipes, foods } = kitchen.book;
  if (avoid.length === 0) return 'Nothing on the list of needs is kept, so recipes are not checked for any.';
  const clear = recipesMeeting(recipes, foods, avoid);
  return clear.length === 0
    ? 'No recipe as it stands lists none of it; swaps may.'
    : `${clear.length} of ${recipes.size} recipes list none of it: ${clear
        .slice(0, 4)
        .map(({ title }) => title)
        .join(', ')}.`;
}

const listOf = (heading: string, items: readonly string[]): Section[] =>
  items.length > 0 ? [{ kind: 'list', heading, items }] : [];
