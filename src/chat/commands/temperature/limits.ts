import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { LOCAL_CODE } from '../../stock/words.ts';

const RULES = [
  'Cold holding: 41 °F (5 °C) or below (3-501.16)',
  'Hot holding: 135 °F (57 °C) or above (3-501.16)',
  'Freezer: food stays frozen (3-501.11); 0 °F (-18 °C) is the quality figure',
  'Out of the fridge with a marked time: 4 hours, then throw out (3-501.19)',
  'Cooling cooked food: 135 to 70 °F in 2 hours, to 41 °F in 6 hours in all (3-501.14)',
  'Cooling from room temperature: to 41 °F in 4 hours (3-501.14)',
  'Delivery: cold food at 41 °F or below, frozen food frozen (3-202.11)',
  'Home and tailgate: 2 hours, 1 hour above 90 °F (USDA and FDA advice)',
];

/** The limits themselves; nothing is logged. */
export function limits(asked: Asked): Answer {
  const isHot = /\bhot\b/i.test(asked.request.text);
  return {
    title: isHot
      ? 'Hot food is held at 135 °F (57 °C) or above (FDA Food Code model 3-501.16).'
      : '41 °F (5 °C) or below: cold food in a fridge (FDA Food Code model 3-501.16).',
    sections: [{ kind: 'list', heading: 'FDA Food Code model', items: RULES }],
    cautions: [LOCAL_CODE],
    next: ['fridge 38F', 'temperature log'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: { coldLimitF: 41, hotLimitF: 135, outMin: 240, logged: false },
  };
}
