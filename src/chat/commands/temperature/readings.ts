import { placesCalled } from '../../../kitchen/stock/places.ts';
import { COLD_LIMIT_F, type ReportedReading, recordReadings } from '../../../kitchen/stock/temperature.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import type { SlotValue } from '../../slots.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import { whenDone } from '../../stock/when.ts';
import { degrees, readingOf } from './degrees.ts';
import { CANNOT_TELL, readingsAnswer } from './reading-answer.ts';

/** Logs one or several readings of the kitchen's places. */
export async function logReadings(asked: Asked): Promise<Answered> {
  const { slots } = asked;
  const readings: ReportedReading[] = [];
  for (const { location, tempF } of readingsSaid(asked)) {
    if (location === undefined) return askWhere(asked, tempF, coldPlaces(asked));
    if (HOT.test(location)) {
      readings.push({ place: { id: 'hot_holding' }, tempF });
      continue;
    }
    const places = placesCalled(asked.kitchen.book, location);
    const [place] = places;
    if (places.length > 1)
      return askWhere(
        asked,
        tempF,
        places.map(({ name }) => name),
      );
    if (place) readings.push({ place, tempF });
  }
  const atMs = whenDone(asked, slots.when);
  const logged = await recordReadings(deskOf(asked), {
    ...doingOf(asked, atMs),
    readings,
    ...(typeof slots.action === 'string' ? { action: slots.action } : {}),
  });
  return { answer: readingsAnswer(asked, logged, atMs), conversation: settled(asked, 'temperature') };
}

/** Where hot food is held; kitchens rarely name these among their places. */
const HOT = /\b(?:hot (?:box|well|hold|holding)|warmer|steam table)\b/i;

const coldPlaces = ({ kitchen }: Asked): string[] =>
  kitchen.book.settings.locations.filter(({ kind }) => kind !== 'room').map(({ name }) => name);

function readingsSaid({ slots }: Asked): { location: string | undefined; tempF: number }[] {
  if (Array.isArray(slots.readings)) {
    return slots.readings.map((row: SlotValue) => {
      const { location, temp_f: tempF } = row as { location: string; temp_f: number };
      return { location, tempF };
    });
  }
  const tempF = readingOf(slots);
  if (tempF === undefined) {
    throw new Problem('needs_more', 'What does it read?', 'Write it like "fridge 2 38F" or "fridge 2 4C".');
  }
  return [{ location: typeof slots.location === 'string' ? slots.location : undefined, tempF }];
}

/** Which place is not guessed; a warm one is said to be warm at once. */
function askWhere(asked: Asked, tempF: number, names: readonly string[]): Answered {
  const isWarm = tempF > COLD_LIMIT_F;
  return {
    answer: {
      title: `Which one reads ${degrees(tempF)}: ${names.join(' or ')}? Not logged yet.`,
      sections: isWarm
        ? [
            {
              kind: 'text',
              text: 'Above 41 °F (5 °C) is too warm for a fridge: serve nothing from it until this is sorted out.',
            },
          ]
        : [],
      cautions: isWarm ? [CANNOT_TELL] : [],
      next: names.slice(0, 3).map((name) => ({ label: name, says: name })),
      audience: 'asker',
      data: { asks: 'location', tempF, logged: false },
    },
    conversation: {
      ...asked.conversation,
      question: {
        slot: 'location',
        options: names.map((name) => name.toLowerCase()),
        reading: { intent: 'temperature', slots: asked.slots },
      },
    },
  };
}
