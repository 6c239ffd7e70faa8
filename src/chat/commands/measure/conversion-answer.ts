import type { Book } from '../../../nutrition/book.ts';
import type { Food } from '../../../nutrition/food.ts';
import { amountText, grouped } from '../../../nutrition/measure/amount-text.ts';
import { kitchenMeasure } from '../../../nutrition/measure/kitchen-measure.ts';
import { convert } from '../../../nutrition/portion/convert.ts';
import { type MassReading, massOf } from '../../../nutrition/portion/mass-of.ts';
import { Problem } from '../../../nutrition/problem.ts';
import { DISHERS, disherTsp } from '../../../nutrition/units/dishers.ts';
import { readUnit, type Unit, unitName } from '../../../nutrition/units/unit.ts';
import { TEASPOON_ML } from '../../../nutrition/units/unit-table.ts';
import type { Answer } from '../../answer.ts';
import { findFood } from '../../find-food.ts';
import { slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { gramsText } from '../scale/batch-words.ts';
import { timesText } from '../scale/factor-answer.ts';

/** "16 T = ? cups", "2 Tbs honey in grams", "half of 3/4 cup", "1 cup oats". */
export async function conversionAnswer(
  book: Book,
  slots: Slots,
  amount: number,
  unit: string,
): Promise<Answer> {
  if (!(amount > 0))
    throw new Problem('bad_quantity', 'There is nothing to convert.', 'Write an amount above 0.');
  const words = slotText(slots, 'ingredient');
  const food = words === undefined ? undefined : await findFood(book, words);
  const to = slotText(slots, 'output_unit') ?? (food ? defaultTarget(unit) : undefined);
  const from = readUnit(unit);
  if (to === undefined) return timesAnswer(amount, unit, from);
  const done = convert(amount, unit, to, food);
  const said = sayAmount(amount, unit, from);
  const of = food ? ` ${food.name}` : '';
  return {
    title: `${said}${of} = ${roundedText(done.amount, done.unit)}`,
    sections: notes(done, food, from).map((text) => ({ kind: 'text', text })),
    cautions: [],
    next: [],
    audience: 'channel',
    data: {
      amount,
      unit: from?.id ?? unit,
      result: Number(done.amount.toPrecision(8)),
      resultUnit: done.unit.id,
      ...(food
        ? { food: food.id, massG: Number((done.massG ?? massOf(food, amount, unit).massG).toPrecision(6)) }
        : {}),
    },
  };
}

/** Of a food, a weight is asked back as a measure and a measure as a weight. */
const defaultTarget = (unit: string): string => (readUnit(unit)?.kind === 'mass' ? 'cup' : 'g');

function notes(done: ReturnType<typeof convert>, food: Food | undefined, from: Unit | undefined): string[] {
  const measure = measureNote(done, food);
  return [
    ...(measure === undefined ? [] : [measure]),
    ...(done.via ? [portionNote(done.via, food)] : []),
    ...[from, done.unit].flatMap((unit) => disherNote(unit)),
    ...(from?.id === 'oz' && done.via ? ['oz is weight here; for volume write fl oz.'] : []),
  ];
}

const portionNote = ({ said, portion }: MassReading, food: Food | undefined): string =>
  [
    `From this food's own measure: ${said}${food?.source.kind === 'usda_sr28' ? ' (USDA SR28)' : ''}.`,
    readUnit(portion?.unit ?? '')?.kind === 'volume'
      ? 'Levelled; a scale is surer.'
      : 'Sizes vary; a scale is surer.',
  ].join(' ');

/** What to take when the sum is no measure a kitchen owns: 0.43 cup. */
function measureNote(done: ReturnType<typeof convert>, food: Food | undefined): string | undefined {
  if (done.unit.kind !== 'volume' || done.unit.id === 'ml' || done.unit.id === 'l') return undefined;
  if (food && done.massG !== undefined) {
    const { text } = kitchenMeasure(food, done.massG, done.unit.id);
    return text === roundedText(done.amount, done.unit) ? undefined : `Measure ${text}.`;
  }
  const text = timesText(done.amount, done.unit);
  return text === roundedText(done.amount, done.unit) ? undefined : `Measure ${text}.`;
}

function disherNote(unit: Unit | undefined): string[] {
  const disher = DISHERS.find(({ number }) => unit?.id === `disher_${number}`);
  if (!disher) return [];
  const exactFlOz = Number((disherTsp(disher.number) / 6).toFixed(3));
  return [
    `No. ${disher.number}: exactly 32/${disher.number} = ${exactFlOz} fl oz, used here; the usual chart says ${disher.chartText}.`,
  ];
}

/** Without a unit to go to: the amount as a kitchen measures it, with its metric size. */
function timesAnswer(amount: number, written: string, from: Unit | undefined): Answer {
  if (!from) {
    throw new Problem(
      'unknown_unit',
      `"${written.slice(0, 30)}" is not a measure I know.`,
      'Write tsp, Tbsp, cup, fl oz, oz, lb, g or mL.',
    );
  }
  if (from.kind === 'food_word') {
    throw new Problem(
      'needs_more',
      `How much is ${sayAmount(amount, written, from)} of what?`,
      'Name the food, for example "2 scoops vanilla whey in grams".',
    );
  }
  const metric =
    from.kind === 'volume' ? `${gramsText(amount * from.ml)} mL` : `${gramsText(amount * from.g)} g`;
  return {
    title: `${timesText(amount, from)} (${metric})`,
    sections: disherNote(from).map((text) => ({ kind: 'text', text })),
    cautions: [],
    next: [],
    audience: 'channel',
    data: {
      amount,
      unit: from.id,
      ...(from.kind === 'volume'
        ? { volumeMl: amount * from.ml, tsp: (amount * from.ml) / TEASPOON_ML }
        : { massG: amount * from.g }),
    },
  };
}

const sayAmount = (amount: number, written: string, unit: Unit | undefined): string =>
  `${amountText(amount)}${unit ? ` ${unitName(unit, amount)}` : written === '' ? '' : ` ${written}`}`;

function roundedText(amount: number, unit: Unit): string {
  const text = unit.kind === 'mass' && unit.one === 'g' ? gramsText(amount) : plainAmount(amount);
  return `${text} ${unitName(unit, amount)}`;
}

/** Fractions a kitchen knows as such; else three figures, so that small amounts are never shown as nothing. */
function plainAmount(amount: number): string {
  const asFraction = amountText(amount);
  if (asFraction.includes('/') || Number.isInteger(amount)) return asFraction;
  return amount >= 1000 ? grouped(Math.round(amount)) : String(Number(amount.toPrecision(3)));
}
