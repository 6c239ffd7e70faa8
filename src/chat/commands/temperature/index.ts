import type { Answered, Asked, Command } from '../../command.ts';
import { withQuestion } from '../../stock/merged.ts';
import { cooling, receiving } from './cooling.ts';
import { temperatureHead } from './head.ts';
import { limits } from './limits.ts';
import { temperatureLog } from './log.ts';
import { powerOutage } from './power.ts';
import { logReadings } from './readings.ts';
import { timeOut } from './time-out.ts';

/** Readings logged and judged by the model code's limits; it never says that food is fit to serve. */
export const temperature: Command = {
  ...temperatureHead,
  answers: (asked) => route(withQuestion(asked)),
};

/** A unit that does not cool is met like a power failure. */
const DOWN = /\b(?:broke|broken|died|dead|stopped|not working|unplugged|failed|isn'?t cold)\b/i;

function route(asked: Asked): Answered | Promise<Answered> {
  const { slots } = asked;
  const hasReading = slots.temp_f !== undefined || slots.temp_c !== undefined;
  if (slots.output === 'log') return temperatureLog(asked);
  if (slots.event === 'power_outage') return powerOutage(asked);
  if (slots.event === 'receiving' && hasReading) return receiving(asked);
  const isCooling =
    slots.event === 'cooling' || (slots.duration_min !== undefined && slots.location === undefined);
  if (hasReading && isCooling && slots.event !== 'time_out') return cooling(asked);
  if (slots.event === 'time_out') return timeOut(asked);
  if (!hasReading && DOWN.test(asked.request.text)) return powerOutage(asked);
  if (slots.ask === 'limit' || !hasReading) return { answer: limits(asked) };
  return logReadings(asked);
}
