import type { AllergenMark } from '../../nutrition/allergens.ts';
import type { ToldLabel } from '../pantry/pantry.ts';
import type { Batch, HoldingState, LoggedReading } from './ledger.ts';
import { COLD_LIMIT_F } from './temperature.ts';

/** What was told of one product in a batch after the batch was logged, beyond what the batch has on record. */
export interface LabelNews {
  readonly foodId: string;
  readonly name: string;
  /** True until staff have read the label. */
  readonly isOpen: boolean;
  readonly contains: readonly AllergenMark[];
  readonly advisory: readonly AllergenMark[];
  readonly sinceMs: number;
  /** The entry that brought it last. */
  readonly eventId: string;
}

/** Why pieces are not served until a reading, a check of the label, or staff's decision. */
export type Hold =
  | { readonly kind: 'warm'; readonly sinceMs: number; readonly location: string; readonly tempF: number }
  | { readonly kind: 'label'; readonly sinceMs: number; readonly news: LabelNews };

/** Staff's decision that a batch may go on, with its place in the order of entries. */
export interface Release {
  readonly batchId: string;
  readonly eventId: string;
}

/** Where pieces stood, the present place first; an entry's id tells what was recorded before what. */
export interface Stay {
  readonly location: string;
  readonly state: HoldingState;
  readonly eventId: string;
  readonly fromMs: number;
  /** The last reading of that place while or before they stood there. */
  readonly last?: LoggedReading;
}

/** What labels say now that the batch did not have on record when it was made. */
export function newsOf(batch: Batch, notes: readonly ToldLabel[]): readonly LabelNews[] {
  const news = new Map<string, LabelNews>();
  const names = new Map(batch.facts.ingredients.map(({ foodId, name }) => [foodId, name]));
  const knows = (marks: readonly AllergenMark[]) => (mark: AllergenMark) =>
    !marks.some(({ allergen }) => allergen === mark.allergen);
  const { contains: inIt, advisory: mayBe } = batch.facts;
  for (const { foodId, state, contains, advisory, eventId, atMs } of notes) {
    const name = names.get(foodId);
    if (name === undefined || eventId <= batch.eventId) continue;
    if (state === 'as_before') {
      news.delete(foodId);
      continue;
    }
    const before = news.get(foodId);
    news.set(foodId, {
      foodId,
      name,
      isOpen: state === 'changed',
      contains: [...(before?.contains ?? []), ...contains.filter(knows(inIt))],
      advisory: [...(before?.advisory ?? []), ...advisory.filter(knows([...inIt, ...mayBe]))],
      sinceMs: before?.sinceMs ?? atMs,
      eventId,
    });
  }
  return [...news.values()].filter(
    ({ isOpen, contains, advisory }) => isOpen || contains.length > 0 || advisory.length > 0,
  );
}

/** What holds these pieces back. A decision of staff ends what was on record before it, and nothing told after it. */
export function holdsOf(
  batch: Batch,
  stays: readonly Stay[],
  news: readonly LabelNews[],
  releases: readonly Release[],
): readonly Hold[] {
  const released = latest(releases.flatMap(({ batchId, eventId }) => (batchId === batch.id ? eventId : [])));
  const labels = news
    .filter(({ eventId }) => eventId > released)
    .map((each): Hold => ({ kind: 'label', sinceMs: each.sinceMs, news: each }));
  const warm = batch.facts.keepCold ? warmStay(stays) : undefined;
  if (warm === undefined || warm.eventId <= released) return labels;
  return [warm.hold, ...labels];
}

/** Ids sort in the order of recording; before all of them when there is none. */
const latest = (eventIds: readonly string[]): string => [...eventIds].sort().at(-1) ?? '';

/**
 * The last fridge these pieces stood in whose last reading was too warm; a reading at the limit or below, taken where
 * they stand now, ends it. A move to a cold place alone does not.
 */
function warmStay(stays: readonly Stay[]): { readonly hold: Hold; readonly eventId: string } | undefined {
  for (const { location, state, eventId, fromMs, last } of stays) {
    if (state !== 'fridge' || last === undefined) continue;
    if (last.tempF > COLD_LIMIT_F) {
      const sinceMs = Math.max(last.atMs, fromMs);
      const hold = { kind: 'warm', sinceMs, location, tempF: last.tempF } as const;
      return { hold, eventId: latest([last.eventId, eventId]) };
    }
    if (last.eventId > eventId && last.atMs >= fromMs) return undefined;
  }
  return undefined;
}
