import { Problem } from '../../nutrition/problem.ts';
import { checkWhen, type Desk, type Doing, placeOf } from './desk.ts';
import type { Holding, LoggedReading } from './ledger.ts';
import { eventOf, recordedBefore } from './record-taken.ts';

/** FDA Food Code (model) 3-501.16(A)(2): cold holding at 41 °F (5 °C) or below. */
export const COLD_LIMIT_F = 41;
/** No number in the model code; 0 °F (-18 °C) is FDA's consumer and quality figure. */
export const FREEZER_QUALITY_F = 0;

const COLDEST_F = -100;
const HOTTEST_F = 220;
const LOOK_BACK_MS = 31 * 24 * 3_600_000;

export const fahrenheitOf = (celsius: number): number => (celsius * 9) / 5 + 32;
export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

export interface Reported extends Doing {
  readonly location: string;
  readonly tempF: number;
  readonly action?: string;
}

export interface Judged {
  readonly location: { readonly id: string; readonly name: string; readonly kind: string };
  readonly tempF: number;
  readonly above: boolean;
  /** The last reading at or below the limit, before this one. */
  readonly lastGood?: LoggedReading;
  /** What is in there, by use-by. */
  readonly holdings: readonly Holding[];
}

/** Writes a reading down and judges it by the model code's limit; it never says that food is safe. */
export async function recordReading(desk: Desk, reported: Reported): Promise<Judged> {
  const place = placeOf(desk.book, reported.location, 'fridge');
  const atMs = checkWhen(reported.atMs, desk.nowMs);
  const { tempF } = reported;
  if (!Number.isFinite(tempF) || tempF < COLDEST_F || tempF > HOTTEST_F) {
    throw new Problem(
      'bad_quantity',
      'That is not a temperature a kitchen meets.',
      'Write it like "fridge 2 38F" or "fridge 2 4C".',
    );
  }
  return desk.ledger.write(async (ledger) => {
    const earlier = await ledger.readings({ location: place.id, fromMs: atMs - LOOK_BACK_MS, toMs: atMs });
    const lastGood = earlier.filter((reading) => reading.tempF <= COLD_LIMIT_F).at(-1);
    if (!(await recordedBefore(ledger, reported.requestKey))) {
      await ledger.append({
        event: eventOf(ledger, desk, 'temperature', { ...reported, atMs }),
        readings: [
          {
            location: place.id,
            atMs,
            tempF,
            ...(reported.action === undefined ? {} : { action: reported.action }),
          },
        ],
      });
    }
    const holdings = (await ledger.holdings()).filter((holding) => holding.location === place.id);
    const above =
      place.kind === 'freezer' ? tempF > COLD_LIMIT_F : tempF > COLD_LIMIT_F && place.kind !== 'room';
    return { location: place, tempF, above, ...(lastGood ? { lastGood } : {}), holdings };
  });
}
