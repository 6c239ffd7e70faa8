import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { isKnownAvoidedFood } from '../../../nutrition/avoided-food.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { listed, needsAmong, needsOf } from '../../need-words.ts';
import type { Slots } from '../../slots.ts';
import { rosterOf, staffOnly } from './who.ts';
import { avoidWords } from './words.ts';

/** A question about what somebody may eat, with what the roster knows of that person laid over what was said. */
export interface ForWhom {
  /** As it was asked, with the needs said and kept in `avoid`, and other foods avoided in `avoid_foods`. */
  readonly asked: Asked;
  /** Whom it is for; absent for nobody in particular. */
  readonly person?: PersonNeeds;
  /** "For the needs kept of you: peanut and tree nuts."; absent for nobody in particular. */
  readonly note?: string;
}

/** What somebody says who asks for themselves. */
const FOR_ME =
  /\b(?:for (?:me|myself)|(?:can|could|may|should|do|shall|must) i (?:eat|have|take|grab|get|snack|try)|i (?:can|could|may|should) (?:eat|have|take|grab|get|snack)|(?:can|could|may|should|do|shall) i\b[^?.]*\b(?:eat|have)|hurt me|i'?m (?:hungry|starving)|my (?:allerg\w+|needs))\b/i;
/** A code as people write one: WP-07. */
const CODE = /\b[a-z]{2,4}-\d{1,4}\b/i;

/**
 * Lays the needs kept of the person a question is for over it. `isMine` says that the question is the asker's own even
 * without the words for it. Somebody else's needs are for staff alone.
 * @throws Problem `not_allowed`, or `not_found` for a code nobody has.
 */
export async function forWhom(asked: Asked, isMine = false): Promise<ForWhom> {
  const code = CODE.exec(asked.request.text)?.[0].toUpperCase() ?? codeBefore(asked);
  const own = asked.request.asker.who.toUpperCase();
  if (code !== undefined && code !== own) return forOther(asked, code);
  const isForMe = code === own || isMine || FOR_ME.test(asked.request.text) || whoBefore(asked) === 'me';
  const person = isForMe ? await kept(asked, own) : undefined;
  return person ? laidOver(asked, person, 'you') : { asked };
}

async function forOther(asked: Asked, code: string): Promise<ForWhom> {
  staffOnly(asked);
  const person = await kept(asked, code);
  if (!person)
    throw new Problem(
      'not_found',
      `Nothing is kept of ${code}, so nothing is checked for that person.`,
      `Write the needs, like "${code} needs: peanut, vegan", or ask "roster".`,
    );
  return laidOver(asked, person, person.code);
}

/** A few words after a question lean on whom it was for. */
function whoBefore({ request, conversation }: Asked): string | undefined {
  const who = conversation.last?.slots.for_whom;
  return typeof who === 'string' && request.text.trim().split(/\s+/).length <= 5 ? who : undefined;
}

function codeBefore(asked: Asked): string | undefined {
  const who = whoBefore(asked);
  return who === 'me' || asked.request.asker.role !== 'staff' ? undefined : who;
}

/** What the roster knows of somebody; a kitchen without a memory knows nobody. */
async function kept(asked: Asked, code: string): Promise<PersonNeeds | undefined> {
  try {
    return await rosterOf(asked).get(code);
  } catch (error) {
    if (error instanceof Problem && error.code === 'unavailable') return undefined;
    throw error;
  }
}

function laidOver(asked: Asked, person: PersonNeeds, whom: string): ForWhom {
  const needs = needsAmong([...needsOf(asked.slots.avoid), ...person.avoid]);
  const slots: Slots = {
    ...asked.slots,
    ...(needs.length > 0 ? { avoid: [...needs] } : {}),
    ...(person.foods.length > 0 ? { avoid_foods: [...person.foods] } : {}),
  };
  const foods = [...asked.kitchen.book.foods.values()];
  const unknown = person.foods.filter((word) => !isKnownAvoidedFood(foods, word));
  const note =
    person.avoid.length + person.foods.length === 0
      ? `No needs are kept of ${whom}, so only what was said is checked.`
      : `For the needs kept of ${whom}: ${avoidWords(person)}.${
          unknown.length > 0
            ? ` ${listed(unknown)}: no food here goes by that name, so it is NOT checked.`
            : ''
        }`;
  return { asked: { ...asked, slots }, person, note };
}

/** The answer with whose needs it goes by, for the asker alone; the conversation keeps whom it is for, never the needs. */
export function toldFor(answered: Answered, { person, note }: ForWhom, said: Asked): Answered {
  if (!person || note === undefined) return answered;
  const answer: Answer = {
    ...answered.answer,
    sections: [{ kind: 'text', text: note }, ...answered.answer.sections],
    audience: 'asker',
    data: { ...answered.answer.data, forCode: person.code },
  };
  const { conversation } = answered;
  if (!conversation?.last) return { ...answered, answer };
  const { avoid: _kept, avoid_foods: _foods, ...others } = conversation.last.slots;
  const isOwn =
    person.code === said.request.asker.who.toUpperCase() || person.member === said.request.asker.who;
  const slots: Slots = {
    ...others,
    ...(said.slots.avoid === undefined ? {} : { avoid: said.slots.avoid }),
    for_whom: isOwn ? 'me' : person.code,
  };
  return { answer, conversation: { ...conversation, last: { ...conversation.last, slots } } };
}

/** Foods beyond the list of needs that are avoided. */
export const avoidedFoods = ({ avoid_foods }: Slots): readonly string[] =>
  Array.isArray(avoid_foods) ? avoid_foods.map(String) : [];
