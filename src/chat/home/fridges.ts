import { COLD_LIMIT_F } from '../../kitchen/stock/temperature.ts';
import type { Asked } from '../command.ts';
import { degrees } from '../commands/temperature/degrees.ts';
import { clockText } from '../stock/words.ts';

const LOOK_BACK_MS = 7 * 24 * 3_600_000;

/** Each cold place with what it read last, and when. */
export async function fridgeLines(asked: Asked): Promise<string[]> {
  const { kitchen, request } = asked;
  const readings = await kitchen
    .ledgers(request.asker.workspace)
    .readings({ fromMs: request.nowMs - LOOK_BACK_MS, toMs: request.nowMs + 1 });
  return kitchen.book.settings.locations
    .filter(({ kind }) => kind !== 'room')
    .map(({ id, name }) => {
      const last = readings.filter(({ location }) => location === id).at(-1);
      if (!last) return `${name}: no reading in the last 7 days`;
      const warm = last.tempF > COLD_LIMIT_F ? ', ABOVE 41 °F (5 °C): act now' : '';
      return `${name}: ${degrees(last.tempF)}${warm}, ${clockText(asked, last.atMs)}`;
    });
}
