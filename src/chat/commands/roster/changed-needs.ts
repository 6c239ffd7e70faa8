import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Section } from '../../answer.ts';
import { needsAmong } from '../../need-words.ts';
import type { Slots } from '../../slots.ts';
import { avoidWords } from './words.ts';

type Avoided = Pick<PersonNeeds, 'avoid' | 'foods'>;

/** What a person avoids once something was told, with what stayed unsaid and what went. */
export interface ChangedNeeds extends Avoided {
  /** Kept from before though it was not said again. */
  readonly kept: Avoided;
  /** Gone, since that was plainly asked. */
  readonly dropped: Avoided;
}

const NOTHING: Avoided = { avoid: [], foods: [] };
const without = (from: Avoided, what: Avoided): Avoided => ({
  avoid: from.avoid.filter((need) => !what.avoid.includes(need)),
  foods: from.foods.filter((food) => !what.foods.includes(food)),
});
const both = (a: Avoided, b: Avoided): Avoided => ({
  avoid: needsAmong([...a.avoid, ...b.avoid]),
  foods: [...new Set([...a.foods, ...b.foods])],
});

/**
 * Lays what was told over what was kept.
 * @throws Problem `not_found` when something is to be removed that is not kept.
 */
export function changedNeeds(before: Avoided | undefined, told: Avoided, slots: Slots): ChangedNeeds {
  const known = before ?? NOTHING;
  if (slots.drop === true) return dropping(known, told);
  const isNone = slots.none === true && told.avoid.length + told.foods.length === 0;
  if (slots.only === true || isNone) return { ...told, kept: NOTHING, dropped: without(known, told) };
  return { ...both(known, told), kept: without(known, told), dropped: NOTHING };
}

function dropping(known: Avoided, told: Avoided): ChangedNeeds {
  const strange = without(told, known);
  if (told.avoid.length + told.foods.length === 0 || strange.avoid.length + strange.foods.length > 0)
    throw new Problem(
      'not_found',
      `Not kept, so not removed: ${avoidWords(strange)}. Kept is ${avoidWords(known)}; nothing was changed.`,
      'Write "remove peanut from my needs" with what is kept, or "my needs are only milk".',
    );
  return { ...without(known, told), kept: NOTHING, dropped: told };
}

export const droppedText = ({ dropped }: ChangedNeeds): string =>
  dropped.avoid.length + dropped.foods.length > 0 ? ` No longer kept: ${avoidWords(dropped)}.` : '';

/** What stayed though it was not said again, and how it goes. */
export function keptText({ kept }: ChangedNeeds): Section[] {
  const words = avoidWords(kept);
  if (kept.avoid.length + kept.foods.length === 0) return [];
  const text = `Kept from before: ${words}. To drop it, write "remove ${words} from my needs".`;
  return [{ kind: 'text', text }];
}
