import { labelStandings } from '../../../kitchen/pantry/book-as-told.ts';
import type { LabelNote, LabelState } from '../../../kitchen/pantry/pantry.ts';
import { recordLabels } from '../../../kitchen/pantry/record-pantry.ts';
import type { Holding } from '../../../kitchen/stock/ledger.ts';
import { sayHowOn } from '../../../kitchen/stock/say-holds.ts';
import type { Food } from '../../../nutrition/food.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { listed, reactionCaution } from '../../need-words.ts';
import { alike, readTogether } from '../../pantry/alike.ts';
import { marksOf, marksText } from '../../pantry/label-marks.ts';
import { KITCHEN_ROLES } from '../../roles.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { holdingLine } from '../../stock/words.ts';

/** What a label says, as against a question whether somebody may eat it. */
const NAMES = /\b(?:contains?|traces?|ha(?:s|ve)|lists?|says?|includes?|names?|warns?|there(?:'?s)?)\b/i;
const ASKS = /\?|^\s*(?:is|are|does|do|did|can|could|may|should|would|will|has|have|any)\b/i;
const AS_BEFORE = /\b(?:same as before|as before|unchanged|no changes?|nothing new)\b/i;

/** Whether the message tells of a label that this person may tell of; else it is a question as any other. */
export const tellsOfLabel = ({ slots, request }: Asked): boolean =>
  KITCHEN_ROLES.includes(request.asker.role) &&
  (slots.changed_product !== undefined || slots.checked_label !== undefined);

/** "The new pretzels say may contain peanut", "checked the label of pretzels": recorded, with what it means for recipes. */
export async function labelTold(asked: Asked, food: Food): Promise<Answer> {
  const { slots, request } = asked;
  const isCheck = slots.checked_label !== undefined;
  if (isCheck && request.asker.role !== 'staff') {
    throw new Problem(
      'not_allowed',
      `Only staff can say that the label of ${food.name} was checked.`,
      'Show staff the package; until then nothing that uses it can be logged as made.',
    );
  }
  const state: LabelState = !isCheck ? 'changed' : AS_BEFORE.test(request.text) ? 'as_before' : 'checked';
  const marks = marksSaid(asked);
  const desk = deskOf(asked);
  const foods = isCheck ? readTogether(asked, food, await desk.ledger.labelNotes()) : alike(asked, food);
  const labels = foods.map(({ id }): LabelNote => ({ foodId: id, state, ...marks }));
  const { again } = await recordLabels(desk, { ...doingOf(asked, request.nowMs), labels });
  const standings = labelStandings(await desk.ledger.labelNotes());
  const standing = foods.map(({ id }) => standings.get(id)).find((known) => known !== undefined);
  const held = (await desk.ledger.holdings()).filter(({ holds }) =>
    holds?.some((hold) => hold.kind === 'label' && foods.some(({ id }) => id === hold.news.foodId)),
  );
  return answerOf(asked, foods, { state, again, held, told: standing ?? { contains: [], advisory: [] } });
}

/** @throws Problem `needs_more` when a label that is as before is said to name something new. */
function marksSaid({ slots, request }: Asked): Pick<LabelNote, 'contains' | 'advisory'> {
  const isNamed = slots.told === true || (NAMES.test(request.text) && !ASKS.test(request.text));
  const marks = isNamed ? marksOf(slots.avoid) : [];
  const contains = isNamed ? marksOf(slots.label_contains) : [];
  if (marks.length > 0 && slots.checked_label !== undefined && AS_BEFORE.test(request.text)) {
    throw new Problem(
      'needs_more',
      'As before, or with something new?',
      'Write only what is new on the label, or only "same as before".',
    );
  }
  return slots.may_contain === true ? { contains, advisory: marks } : { contains: marks, advisory: [] };
}

/** Batches that were made before it was told: held, and how they go on. */
function heldSections(asked: Asked, held: readonly Holding[]): Section[] {
  if (held.length === 0) return [];
  return [
    {
      kind: 'list',
      heading: 'Made before: held, serve none',
      items: held.map((holding) => holdingLine(asked, holding)),
    },
    { kind: 'text', text: sayHowOn(asked.kitchen.book, held) },
  ];
}

interface Outcome {
  readonly state: LabelState;
  readonly again: boolean;
  /** Batches made before that wait for staff. */
  readonly held: readonly Holding[];
  readonly told: Pick<LabelNote, 'contains' | 'advisory'>;
}

function answerOf(asked: Asked, foods: readonly Food[], { state, again, held, told }: Outcome): Answer {
  const { recipes, settings } = asked.kitchen.book;
  const ids = new Set(foods.map(({ id }) => id));
  const name = listed(foods.map((food) => food.name));
  const usedIn = [...recipes.values()].filter((r) => r.lines.some(({ foodId }) => ids.has(foodId)));
  const said = marksText(told.contains, told.advisory);
  const isOpen = state === 'changed';
  const beyond = said === '' ? '' : ` (beyond the card: ${said})`;
  return {
    title: again
      ? 'Already recorded; nothing was recorded twice.'
      : isOpen
        ? `Recorded: the label of ${name} changed${beyond}. What uses it cannot be logged as made until staff check the label.`
        : `Recorded: label of ${name} checked${beyond || ', nothing beyond the card'}. What uses it can be logged again.`,
    sections: [
      usedIn.length > 0
        ? { kind: 'list', heading: 'Used in', items: usedIn.map(({ title }) => title) }
        : { kind: 'text', text: 'No recipe card uses it; a swap may.' },
      ...heldSections(asked, held),
    ],
    cautions: [
      isOpen
        ? 'Read its ingredients and its "may contain". Batches made since the new packages came carry the old label: set them aside and ask staff.'
        : "Allergen answers of this workspace count what was recorded here. A label that lost an allergen, or names one outside the nine US majors, belongs in the kitchen's product file.",
      reactionCaution(settings),
    ],
    next: [
      ...foods.map((food) =>
        isOpen ? `checked the label of ${food.name.toLowerCase()}` : `allergens in ${food.name}`,
      ),
      'undo',
    ].map((says) => ({ label: says, says })),
    audience: 'asker',
    data: { foods: [...ids], state, logged: !again, ...told, usedIn: usedIn.map(({ id }) => id) },
  };
}
