import { placesCalled } from '../../../kitchen/stock/places.ts';
import { COLD_LIMIT_F, recordReadings } from '../../../kitchen/stock/temperature.ts';
import { judgePower, type PowerVerdict } from '../../../kitchen/stock/warm-rules.ts';
import type { Answered, Asked } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { holdingLine } from '../../stock/words.ts';
import { degrees, readingOf } from './degrees.ts';
import { CANNOT_TELL, durationText } from './reading-answer.ts';

const TITLES: Record<PowerVerdict, string> = {
  within: 'Doors shut: a closed fridge keeps cold about 4 hours.',
  check_each: 'Measure every food; throw out what was above 41 °F for 2 hours or nobody knows how long.',
  discard: 'Throw out everything refrigerated that reads above 41 °F.',
};

/** A power failure: what its length and a reading mean. A reading is logged, the failure with it. */
export async function powerOutage(asked: Asked): Promise<Answered> {
  const { slots, kitchen, request } = asked;
  const minutes = typeof slots.duration_min === 'number' ? slots.duration_min : 0;
  const tempF = readingOf(slots);
  const verdict = judgePower(minutes, tempF, COLD_LIMIT_F);
  const logged = tempF !== undefined && typeof slots.location === 'string';
  if (logged) {
    const places = placesCalled(kitchen.book, String(slots.location));
    await recordReadings(deskOf(asked), {
      ...doingOf(asked, request.nowMs),
      readings: places.slice(0, 1).map((place) => ({ place, tempF })),
      action: `power out${minutes > 0 ? ` ${durationText(minutes * 60_000)}` : ''}`,
    });
  }
  const cold = (await deskOf(asked).ledger.holdings()).filter(
    ({ state }) => state === 'fridge' || state === 'freezer',
  );
  const lead = [
    minutes > 0
      ? `${durationText(minutes * 60_000)} without ${slots.event === 'power_outage' ? 'power' : 'cooling'}`
      : slots.event === 'power_outage'
        ? 'Power out'
        : 'Not cooling',
    ...(tempF === undefined ? [] : [degrees(tempF)]),
  ].join(', ');
  return {
    answer: {
      title: `${lead}: ${TITLES[verdict]}`,
      sections: [
        {
          kind: 'steps',
          items: [
            'Keep the doors shut. Write down when the power went and when it came back.',
            'When it is back, read each fridge and log it, like "fridge a 42F".',
            'Freezer: about 48 h full, 24 h half full; refreeze only what holds ice crystals or is at 40 °F or below.',
            'Never taste food to decide.',
          ],
        },
        ...(cold.length > 0
          ? [
              {
                kind: 'list' as const,
                heading: 'In the cold',
                items: cold.slice(0, 8).map((holding) => holdingLine(asked, holding)),
              },
            ]
          : []),
        { kind: 'text', text: 'FDA and FoodSafety.gov advice on power failures.' },
      ],
      cautions: [CANNOT_TELL],
      next: ['temperature log', 'stock'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: { verdict, minutes, ...(tempF === undefined ? {} : { tempF }), logged },
    },
  };
}
