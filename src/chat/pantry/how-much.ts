import type { LabelNote } from '../../kitchen/pantry/pantry.ts';
import { recordLabels } from '../../kitchen/pantry/record-pantry.ts';
import type { Food } from '../../nutrition/food.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Answered, Asked } from '../command.ts';
import type { Slots } from '../slots.ts';
import { deskOf, doingOf } from '../stock/desk.ts';
import { labelData, NOTICE_CAUTION, noticeSections, READ_LABEL } from './received-answer.ts';

/** The food is known and not how much: a label that was told is recorded all the same. */
export async function askHowMuch(
  asked: Asked,
  foods: readonly Food[],
  rows: readonly Slots[],
  labels: readonly LabelNote[],
  why?: string,
): Promise<Answered> {
  const [food] = foods;
  if (!food || rows.length > 1) {
    throw new Problem(
      'needs_more',
      'How much of each came? Nothing was logged.',
      'Write the amounts, like "received 4 jars peanut butter and 2 lb oats".',
    );
  }
  if (labels.length > 0)
    await recordLabels(deskOf(asked), { ...doingOf(asked, asked.request.nowMs), labels });
  const {
    changed_product: _told,
    label_contains: _named,
    label_may_contain: _warned,
    ...slots
  } = asked.slots;
  const package_ = food.price?.packageName;
  const examples = [...(package_ === undefined ? [] : [package_]), '2 lb'];
  return {
    answer: {
      title: `How much ${food.name.toLowerCase()} came? Not logged as received yet.`,
      sections: [
        ...noticeSections(asked, labels),
        {
          kind: 'text',
          text: `${why === undefined ? '' : `${why} `}Write the amount, like "${examples.at(-1)}".`,
        },
      ],
      cautions: labels.length > 0 ? [NOTICE_CAUTION] : [READ_LABEL],
      next: [`received 2 lb ${food.name.toLowerCase()}`, ...(labels.length > 0 ? ['undo'] : [])].map(
        (says) => ({
          label: says,
          says,
        }),
      ),
      audience: 'asker',
      data: { asks: 'amount', logged: false, food: food.id, ...labelData(labels) },
    },
    conversation: {
      ...asked.conversation,
      last: { intent: 'stock', slots },
      question: { slot: 'amount', options: [], reading: { intent: 'stock', slots } },
    },
  };
}

/** The request with the amount that was asked for filled in. */
export function withAmount(asked: Asked): Asked {
  const { slots, conversation } = asked;
  const { question } = conversation;
  if (question?.slot !== 'amount' || question.reading.slots.action !== 'received') return asked;
  const amount = slots.amount ?? slots.quantity;
  const isMore = slots.ingredient !== undefined || slots.recipe !== undefined || slots.action !== undefined;
  if (amount === undefined || isMore) return asked;
  const { amount_unit = '' } = slots;
  return { ...asked, slots: { ...question.reading.slots, amount, amount_unit } };
}
