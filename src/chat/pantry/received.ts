import type { LabelNote } from '../../kitchen/pantry/pantry.ts';
import { recordReceived } from '../../kitchen/pantry/record-received.ts';
import type { Food } from '../../nutrition/food.ts';
import { Problem } from '../../nutrition/problem.ts';
import { readUnit } from '../../nutrition/units/unit.ts';
import type { Answered, Asked } from '../command.ts';
import { findFood } from '../find-food.ts';
import { slotCents } from '../money.ts';
import { listed } from '../need-words.ts';
import { slotNumber, slotText } from '../slot-number.ts';
import type { Slots, SlotValue } from '../slots.ts';
import { deskOf, doingOf } from '../stock/desk.ts';
import { whenDone } from '../stock/when.ts';
import { alike } from './alike.ts';
import { boughtMass } from './amount.ts';
import { forKitchen } from './for-kitchen.ts';
import { askHowMuch } from './how-much.ts';
import { marksOf } from './label-marks.ts';
import { type Came, receivedAnswer } from './received-answer.ts';

/**
 * "received 4 jars peanut butter at 6.99 each": on the shelf, and what was paid; a price by staff is in force then. A
 * label that is told with it reopens the allergen check, whether the amount was said or not.
 */
export async function received(asked: Asked): Promise<Answered> {
  forKitchen(asked);
  const rows = rowsOf(asked.slots);
  const foods = rows.map((row) => findFood(asked.kitchen.book, row.ingredient ?? ''));
  const labels = labelsSaid(asked, foods);
  if (rows.some((row) => row.amount === undefined)) return askHowMuch(asked, foods, rows, labels);
  let came: readonly Came[];
  try {
    came = rows.map((row, at) => cameOf(asked, row, foods[at] as Food, rows.length > 1));
  } catch (error) {
    // The label matters before the weight does: it is kept whether the weight can be told or not.
    const isWeight = error instanceof Problem && error.code === 'no_portion';
    if (!isWeight || labels.length === 0 || rows.length > 1) throw error;
    return askHowMuch(asked, foods, rows, labels, error.message);
  }
  const { again, deliveries } = await recordReceived(deskOf(asked), {
    ...doingOf(asked, whenDone(asked, asked.slots.when)),
    foods: came.map(({ food: _food, told: _told, ...row }) => row),
    labels,
  });
  return {
    answer: receivedAnswer(asked, came, deliveries, labels, again),
    conversation: settledOf(asked),
  };
}

/** A delivery of several foods has a row for each; of one, what was said of it. */
function rowsOf(slots: Slots): readonly Slots[] {
  const rows: readonly SlotValue[] = Array.isArray(slots.items) ? slots.items : [];
  const said =
    rows.length > 0 ? rows.map((row) => row as Slots) : slots.ingredient === undefined ? [] : [slots];
  const strange = said.flatMap((row) => slotText(row, 'item') ?? slotText(row, 'unclear') ?? [])[0];
  if (said.length === 0 || strange !== undefined) {
    throw new Problem(
      'needs_more',
      strange === undefined
        ? 'What came, and how much?'
        : `I cannot tell what "${strange.slice(0, 40)}" is. Nothing was logged.`,
      'Write it like "received 4 jars peanut butter at 6.99 each".',
    );
  }
  return said;
}

/** Every package that goes by the word that was said: the one that is used may be another than the one named. */
function labelsSaid(asked: Asked, foods: readonly Food[]): LabelNote[] {
  const { slots } = asked;
  if (slots.changed_product !== true) return [];
  const contains = marksOf(slots.label_contains);
  const advisory = marksOf(slots.label_may_contain);
  const { label_of } = slots;
  const changed = label_of === undefined ? foods : [findFood(asked.kitchen.book, label_of)];
  const meant = new Set(changed.flatMap((food) => [food, ...alike(asked, food)]));
  return [...meant].map(({ id }) => ({ foodId: id, state: 'changed', contains, advisory }));
}

function cameOf(asked: Asked, row: Slots, food: Food, isOneOfSeveral: boolean): Came {
  const amount = slotNumber(row, 'amount') ?? 0;
  const unit = slotText(row, 'amount_unit') ?? '';
  const { massG, assumed } = boughtMass(food, amount, unit);
  const told = slotCents(asked.slots, 'price');
  const lot = slotText(asked.slots, 'lot');
  if (isOneOfSeveral && (told !== undefined || lot !== undefined)) {
    throw new Problem(
      'needs_more',
      `Whose ${told === undefined ? 'lot' : 'price'} is that? Nothing was logged.`,
      'Send each food by itself, like "received 4 jars peanut butter at 6.99 each".',
    );
  }
  const isEach = asked.slots.per === 'each';
  const cents = told === undefined ? undefined : isEach ? Math.round(told * amount) : told;
  const word = readUnit(unit)?.one ?? unit;
  const price = {
    priceCents: told ?? 0,
    packageG: isEach ? massG / amount : massG,
    packageName: isEach ? word : `${amount} ${word}`.trim(),
  };
  const isPrice = told !== undefined && asked.request.asker.role === 'staff' && price.packageName !== '';
  return {
    food,
    foodId: food.id,
    massG,
    ...(lot === undefined ? {} : { lot }),
    ...(cents === undefined ? {} : { cents }),
    ...(isPrice ? { price } : {}),
    told: [...(assumed === undefined ? [] : [assumed]), ...otherPackage(asked, food)],
  };
}

/** What came is on no card, and a package of a name like it is: it counts for what came, not for that one. */
function otherPackage(asked: Asked, food: Food): string[] {
  const meant = alike(asked, food);
  if (meant.includes(food)) return [];
  return [
    `No recipe card uses ${food.name}; cards use ${listed(meant.map(({ name }) => name))}. If that came, write "undo" and name it in full.`,
  ];
}

function settledOf({ conversation, slots }: Asked): NonNullable<Answered['conversation']> {
  const { question: _answered, ...kept } = conversation;
  return { ...kept, last: { intent: 'stock', slots } };
}
