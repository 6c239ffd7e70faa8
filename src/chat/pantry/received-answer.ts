import type { LabelNote } from '../../kitchen/pantry/pantry.ts';
import type { Delivery, ReceivedFood } from '../../kitchen/pantry/record-received.ts';
import type { Food } from '../../nutrition/food.ts';
import type { Answer, Section } from '../answer.ts';
import type { Asked } from '../command.ts';
import { dollars } from '../money.ts';
import { listed } from '../need-words.ts';
import { pantryWords, tenth } from './amount.ts';
import { marksText } from './label-marks.ts';

/** One food that came, with what has to be told of its package. */
export interface Came extends ReceivedFood {
  readonly food: Food;
  readonly told: readonly string[];
}

/** What is on the shelf now, what it did to the shopping list, and what a changed label means. */
export function receivedAnswer(
  asked: Asked,
  came: readonly Came[],
  deliveries: readonly Delivery[],
  labels: readonly LabelNote[],
  again: boolean,
): Answer {
  const lines = came.map(({ food, massG, lot, cents }, at) => {
    const paid = cents === undefined ? '' : `, ${dollars(cents)}`;
    return `${food.name}: ${pantryWords(massG)} received${lot === undefined ? '' : `, lot ${lot}`}${paid}; ${pantryWords(deliveries[at]?.onHandG ?? 0)} on hand.`;
  });
  const listLines = came.flatMap(({ food }, at) => {
    const { isOffList, listedG } = deliveries[at] ?? {};
    if (isOffList) return [`${food.name} is off the shopping list.`];
    return listedG === undefined
      ? []
      : [`${pantryWords(listedG)} ${food.name.toLowerCase()} are still on the shopping list.`];
  });
  const told = came.flatMap((each) => each.told);
  const data = came.map(({ food, massG, cents }, at) => ({
    food: food.id,
    massG: tenth(massG),
    onHandG: tenth(deliveries[at]?.onHandG ?? 0),
    cents: cents ?? null,
  }));
  return {
    title: `${again ? 'Already logged: ' : ''}${lines.join(' ')}`,
    sections: [
      ...noticeSections(asked, labels),
      ...[...told, ...listLines].map((text): Section => ({ kind: 'text', text })),
    ],
    cautions: labels.length > 0 ? [NOTICE_CAUTION] : [READ_LABEL],
    next: nextOf(asked, labels),
    audience: 'channel',
    data: {
      logged: !again,
      ...data[0],
      ...(data.length > 1 ? { foods: data } : {}),
      ...labelData(labels),
    },
  };
}

export const READ_LABEL =
  'Read the label of what came: makers change recipes, and allergens go by the package in use.';
export const NOTICE_CAUTION =
  'Read its ingredients and its "may contain". Batches made since the new packages came carry the old label: set them aside and ask staff.';

export const labelData = (labels: readonly LabelNote[]): Record<string, unknown> =>
  labels.length === 0
    ? {}
    : {
        label: {
          state: 'changed',
          foods: labels.map(({ foodId }) => foodId),
          contains: labels[0]?.contains,
          advisory: labels[0]?.advisory,
        },
      };

/** What a changed label means: what uses it waits for staff. */
export function noticeSections({ kitchen }: Asked, labels: readonly LabelNote[]): Section[] {
  const [first] = labels;
  if (!first) return [];
  const { foods, recipes } = kitchen.book;
  const ids = new Set(labels.map(({ foodId }) => foodId));
  const name = listed([...ids].map((id) => foods.get(id)?.name ?? id));
  const said = marksText(first.contains, first.advisory);
  const usedIn = [...recipes.values()].filter(({ lines }) => lines.some(({ foodId }) => ids.has(foodId)));
  return [
    {
      kind: 'text',
      text: `Recorded: the label of ${name} changed${said === '' ? '' : ` (${said})`}. What uses it cannot be logged as made until staff check the label.`,
    },
    ...(usedIn.length > 0
      ? [{ kind: 'list' as const, heading: 'Used in', items: usedIn.map(({ title }) => title) }]
      : []),
  ];
}

function nextOf({ kitchen }: Asked, labels: readonly LabelNote[]): Answer['next'] {
  const checks = labels
    .slice(0, 2)
    .map(
      ({ foodId }) =>
        `checked the label of ${(kitchen.book.foods.get(foodId)?.name ?? foodId).toLowerCase()}`,
    );
  return [...checks, 'undo', 'what is in the pantry', ...(checks.length > 0 ? [] : ['budget left'])].map(
    (says) => ({ label: says, says }),
  );
}
