import { CONSUMER_HOT_MS, CONSUMER_MS, TIME_AS_CONTROL_MS } from '../../../kitchen/stock/record-moved.ts';
import type { Answered, Asked } from '../../command.ts';
import { clockText } from '../../stock/words.ts';
import { CANNOT_TELL, durationText } from './reading-answer.ts';

/** Said without hours, and longer than any clock. */
const ALL_NIGHT = /\b(?:overnight|all (?:day|night)|since (?:yesterday|last night))\b/i;
const OVERNIGHT_MIN = 8 * 60;

/** "oat bars out for 3 hours", "how long can bars sit out": the clocks, and what is left on them. */
export function timeOut(asked: Asked): Answered {
  const { slots, request, kitchen } = asked;
  const said = typeof slots.duration_min === 'number' ? slots.duration_min : undefined;
  const minutes = said ?? (ALL_NIGHT.test(request.text) ? OVERNIGHT_MIN : undefined);
  const recipe = typeof slots.recipe === 'string' ? kitchen.book.recipes.get(slots.recipe) : undefined;
  const what = recipe?.title ?? 'Cold food';
  const isDry = recipe?.storage === 'room' && !ALL_NIGHT.test(request.text);
  const outMs = minutes === undefined ? undefined : minutes * 60_000;
  const title = isDry
    ? `${what} are kept at room temperature by their card: no clock.`
    : outMs === undefined
      ? '4 hours, then throw out: if it left the fridge at 41 °F (5 °C) or below and that time was marked.'
      : outMs >= TIME_AS_CONTROL_MS
        ? `${said === undefined ? 'That long' : durationText(outMs)} out: throw it out (4 hours at most, FDA Food Code model 3-501.19).`
        : `${durationText(outMs)} out: serve or throw out by ${clockText(asked, request.nowMs - outMs + TIME_AS_CONTROL_MS)}, only if that time is certain and it left at 41 °F or below. Else throw it out now.`;
  return {
    answer: {
      title,
      sections: isDry
        ? []
        : [
            {
              kind: 'list',
              items: [
                'It does not go back to the fridge once it was out on the clock.',
                `At home or a tailgate: ${CONSUMER_MS / 3_600_000} hours, ${CONSUMER_HOT_MS / 3_600_000} hour above 90 °F (USDA and FDA advice).`,
                'Start the clock when you take it out: "took out 12 oat bars at 14:00".',
              ],
            },
          ],
      cautions: isDry ? [] : [CANNOT_TELL],
      next: ['took out 12 oat bars', 'stock'].map((says) => ({ label: says, says })),
      audience: 'channel',
      data: {
        limitMin: TIME_AS_CONTROL_MS / 60_000,
        ...(minutes === undefined ? {} : { outMin: minutes }),
        logged: false,
      },
    },
  };
}
