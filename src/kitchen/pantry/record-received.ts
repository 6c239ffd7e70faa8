import { listNow } from '../shopping/list-now.ts';
import { boughtNotes } from '../shopping/record-listed.ts';
import { checkWhen, type Desk, type Doing, eventOf, recordedBefore } from '../stock/desk.ts';
import type { LedgerWriter } from '../stock/ledger.ts';
import { checkCents, checkMassG } from './amounts.ts';
import type { LabelNote, StatedPrice } from './pantry.ts';
import { sumG } from './uses.ts';

export interface ReceivedFood {
  readonly foodId: string;
  readonly massG: number;
  readonly lot?: string;
  /** What was paid for all of it. */
  readonly cents?: number;
  /** The price of a package, when the delivery told one: it is in force from now on. */
  readonly price?: Omit<StatedPrice, 'atMs' | 'foodId'>;
}

export interface Received extends Doing {
  readonly foods: readonly ReceivedFood[];
  /** Labels that are not as they were; every package the word that was said may mean. */
  readonly labels?: readonly LabelNote[];
}

/** What a delivery changed, of one food. */
export interface Delivery {
  readonly foodId: string;
  /** Grams of this food on the shelf afterwards. */
  readonly onHandG: number;
  /** True when it took the food off the shopping list; `listedG` is what is still to be bought of it. */
  readonly isOffList: boolean;
  readonly listedG?: number;
}

/** Records a delivery as one entry, and takes what came off the shopping list. */
export async function recordReceived(
  desk: Desk,
  received: Received,
): Promise<{ readonly again: boolean; readonly deliveries: readonly Delivery[] }> {
  const { foods, labels = [] } = received;
  for (const { massG, cents, price } of foods) {
    checkMassG(massG);
    if (cents !== undefined) checkCents(cents);
    if (price) checkCents(price.priceCents);
  }
  const atMs = checkWhen(received.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const again = await recordedBefore(ledger, received.requestKey);
    const wasListed = new Set<string>();
    if (!again) {
      const list = await boughtNotes(ledger, foods);
      for (const { foodId } of list) if (foodId !== undefined) wasListed.add(foodId);
      await ledger.append({
        event: eventOf(ledger, desk, 'received', { ...received, atMs }),
        pantry: foods.map(({ price: _price, ...movement }) => movement),
        prices: foods.flatMap(({ foodId, price }) => (price ? [{ foodId, ...price }] : [])),
        list,
        labels,
      });
    }
    return { again, deliveries: await deliveriesOf(ledger, foods, wasListed) };
  });
}

async function deliveriesOf(
  ledger: LedgerWriter,
  foods: readonly ReceivedFood[],
  wasListed: ReadonlySet<string>,
): Promise<Delivery[]> {
  const held = await ledger.pantry();
  const items = listNow(await ledger.listNotes());
  return foods.map(({ foodId }) => {
    const item = items.find((each) => each.foodId === foodId);
    const listedG = wasListed.has(foodId) ? item?.massG : undefined;
    return {
      foodId,
      onHandG: sumG(held.filter((each) => each.foodId === foodId)),
      isOffList: wasListed.has(foodId) && !item,
      ...(listedG === undefined ? {} : { listedG }),
    };
  });
}
