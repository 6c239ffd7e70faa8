import type { Answered, Asked } from '../../command.ts';
import { nothingKnown } from './show.ts';
import { personMeant, rosterOf } from './who.ts';

/** "delete my needs": the person is forgotten, whole. */
export async function forgetNeeds(asked: Asked): Promise<Answered> {
  const person = await personMeant(asked);
  if (!person || !(await rosterOf(asked).remove(person.code))) throw nothingKnown(asked);
  return {
    answer: {
      title: `Deleted: nothing is kept of ${person.code}.`,
      sections: [],
      cautions: ['Plans now count this person as somebody without needs, or not at all.'],
      next: [],
      audience: 'asker',
      data: { code: person.code, deleted: true },
    },
  };
}
