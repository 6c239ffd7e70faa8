import { COLD_LIMIT_F, recordReadings } from '../../../kitchen/stock/temperature.ts';
import { COOLING, COOLING_FROM_ROOM_MIN, judgeCooling } from '../../../kitchen/stock/warm-rules.ts';
import type { Answered, Asked } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { whenDone } from '../../stock/when.ts';
import { clockText } from '../../stock/words.ts';
import { degrees, readingOf } from './degrees.ts';
import { CANNOT_TELL } from './reading-answer.ts';

const MIN_MS = 60_000;

/** "cooling 135F at 12:00", "cooling 78F after 2 hours": logged, and where the two stages stand. */
export async function cooling(asked: Asked): Promise<Answered> {
  const tempF = readingOf(asked.slots) ?? Number.NaN;
  const atMs = whenDone(asked, asked.slots.when);
  const { again } = await recordReadings(deskOf(asked), {
    ...doingOf(asked, atMs),
    readings: [{ place: { id: 'cooling' }, tempF }],
    action: foodOf(asked) ?? 'cooling',
  });
  const elapsed = asked.slots.duration_min;
  const title =
    typeof elapsed === 'number' ? verdictText(asked, tempF, elapsed, atMs) : startText(asked, tempF, atMs);
  return {
    answer: {
      title: `${title} ${again ? 'Already logged.' : 'Logged.'}`,
      sections: [
        {
          kind: 'text',
          text: `Cooked food: 135 to 70 °F within 2 hours, 41 °F within 6 hours in all. Made from room-temperature ingredients: 41 °F within 4 hours${typeof elapsed === 'number' ? '' : ` (${clockText(asked, atMs + COOLING_FROM_ROOM_MIN * MIN_MS)})`} (FDA Food Code model 3-501.14). Shallow pans, ice bath, no lid until cold.`,
        },
      ],
      cautions: [CANNOT_TELL],
      next: ['temperature log'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        logged: !again,
        tempF,
        ...(typeof elapsed === 'number' ? { elapsedMin: elapsed, ...judgeCooling(tempF, elapsed) } : {}),
      },
    },
  };
}

const foodOf = ({ slots, kitchen }: Asked): string | undefined =>
  typeof slots.food === 'string' ? (kitchen.book.foods.get(slots.food)?.name ?? slots.food) : undefined;

function startText(asked: Asked, tempF: number, atMs: number): string {
  const by = (minutes: number) => clockText(asked, atMs + minutes * MIN_MS);
  return tempF >= COOLING.firstF
    ? `${degrees(tempF)}, ${clockText(asked, atMs)}: 70 °F by ${by(COOLING.firstMin)}, 41 °F by ${by(COOLING.lastMin)}.`
    : `${degrees(tempF)}, ${clockText(asked, atMs)}: 41 °F by ${by(COOLING_FROM_ROOM_MIN)}, if it started at room temperature. Say "after 2 hours" if it was cooked.`;
}

function verdictText(asked: Asked, tempF: number, elapsedMin: number, atMs: number): string {
  const verdict = judgeCooling(tempF, elapsedMin);
  if (verdict.state === 'reached')
    return `${degrees(tempF)} after ${elapsedMin} min: at 41 °F or below in time.`;
  if (verdict.state === 'on_track') {
    const by = clockText(asked, atMs + (verdict.untilMin - elapsedMin) * MIN_MS);
    return `${degrees(tempF)} after ${elapsedMin} min: must be ${verdict.toF} °F by ${by}.`;
  }
  return verdict.stage === 'first'
    ? `${degrees(tempF)} after ${elapsedMin} min: not 70 °F within 2 hours. Ask the person in charge: reheat to 165 °F and start again where your code allows it, else throw out.`
    : `${degrees(tempF)} after ${elapsedMin} min: not 41 °F within 6 hours. Throw it out.`;
}

/** "received milk at 45F". */
export async function receiving(asked: Asked): Promise<Answered> {
  const tempF = readingOf(asked.slots) ?? Number.NaN;
  const food = foodOf(asked);
  const atMs = whenDone(asked, asked.slots.when);
  const { again } = await recordReadings(deskOf(asked), {
    ...doingOf(asked, atMs),
    readings: [{ place: { id: 'receiving' }, tempF }],
    action: food ?? 'delivery',
  });
  const isCold = tempF <= COLD_LIMIT_F;
  const what = food ?? 'the delivery';
  return {
    answer: {
      title: `${degrees(tempF)}: ${what} ${isCold ? 'came at or below 41 °F (5 °C).' : 'came above 41 °F (5 °C): do not accept it as cold food.'} ${again ? 'Already logged.' : 'Logged.'}`,
      sections: [
        {
          kind: 'list',
          items: isCold
            ? ['Put it away at once.', 'Read the labels: a changed brand reopens the allergen check.']
            : [
                'Refuse it or set it apart, and call the supplier.',
                'Some foods may arrive warmer where the law says so (milk, shell eggs in 45 °F air): the person in charge decides.',
              ],
        },
      ],
      cautions: isCold ? [] : [CANNOT_TELL],
      next: ['temperature log'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { logged: !again, tempF, food: asked.slots.food ?? null, accepted: isCold },
    },
  };
}
