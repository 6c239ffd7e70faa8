import { Problem } from '../../nutrition/problem.ts';
import { checkWhen, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Holding, LoggedReading } from './ledger.ts';
import type { KitchenPlace } from './places.ts';

/** FDA Food Code (model) 3-501.16(A)(2): cold holding at 41 °F (5 °C) or below. */
export const COLD_LIMIT_F = 41;
/** FDA Food Code (model) 3-501.16(A)(1): hot holding at 135 °F (57 °C) or above. */
export const HOT_LIMIT_F = 135;
/** No number in the model code (3-501.11: stays frozen); 0 °F (-18 °C) is FDA's consumer and quality figure. */
export const FREEZER_QUALITY_F = 0;

const COLDEST_F = -100;
const HOTTEST_F = 250;
const LOOK_BACK_MS = 31 * 24 * 3_600_000;

export const fahrenheitOf = (celsius: number): number => (celsius * 9) / 5 + 32;
export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

export interface ReportedReading {
  /** A place of the kitchen, or what is measured elsewhere: `receiving`, `cooling`, `hot_holding`. */
  readonly place: KitchenPlace | { readonly id: 'receiving' | 'cooling' | 'hot_holding' };
  readonly tempF: number;
}

export interface Reported extends Doing {
  readonly readings: readonly ReportedReading[];
  /** What was done about it, or what was measured, in the reader's words. */
  readonly action?: string;
}

export interface Judged {
  readonly place: ReportedReading['place'];
  readonly tempF: number;
  /** Warmer than the model code's limit for cold holding. */
  readonly above: boolean;
  /** The last reading at or below the limit, before this one. */
  readonly lastGood?: LoggedReading;
  /** What is in there, by use-by. */
  readonly holdings: readonly Holding[];
}

export interface ReadingsLogged {
  readonly judged: readonly Judged[];
  readonly again: boolean;
}

/** Writes readings down as one entry and judges each by the model code's limit; it never says that food is safe. */
export async function recordReadings(desk: Desk, reported: Reported): Promise<ReadingsLogged> {
  const atMs = checkWhen(reported.atMs, desk.nowMs);
  for (const { tempF } of reported.readings) checkReading(tempF);
  const { action } = reported;
  return desk.ledger.write(async (ledger) => {
    const judged: Judged[] = [];
    for (const { place, tempF } of reported.readings) {
      const earlier = await ledger.readings({ location: place.id, fromMs: atMs - LOOK_BACK_MS, toMs: atMs });
      const lastGood = earlier.filter((reading) => reading.tempF <= COLD_LIMIT_F).at(-1);
      const holdings = (await ledger.holdings()).filter((holding) => holding.location === place.id);
      const above = tempF > COLD_LIMIT_F && 'kind' in place && place.kind !== 'room';
      judged.push({ place, tempF, above, ...(lastGood ? { lastGood } : {}), holdings });
    }
    if (await recordedBefore(ledger, reported.requestKey)) return { judged, again: true };
    await ledger.append({
      event: eventOf(ledger, desk, 'temperature', { ...reported, atMs }),
      readings: reported.readings.map(({ place, tempF }) => ({
        location: place.id,
        atMs,
        tempF,
        ...(action === undefined ? {} : { action }),
      })),
    });
    return { judged, again: false };
  });
}

function checkReading(tempF: number): void {
  if (Number.isFinite(tempF) && tempF >= COLDEST_F && tempF <= HOTTEST_F) return;
  throw new Problem(
    'bad_quantity',
    'That is not a temperature a kitchen meets.',
    'Write it like "fridge 2 38F" or "fridge 2 4C".',
  );
}
