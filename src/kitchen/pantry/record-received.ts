import { listNow } from '../shopping/list-now.ts';
import { boughtNotes } from '../shopping/record-listed.ts';
import { checkWhen, type Desk, type Doing, eventOf, recordedBefore } from '../stock/desk.ts';
import { checkCents, checkMassG } from './amounts.ts';
import type { LabelNote, StatedPrice } from './pantry.ts';
import { sumG } from './uses.ts';

export interface Received extends Doing {
  readonly foodId: string;
  readonly massG: number;
  readonly lot?: string;
  /** What was paid for all of it. */
  readonly cents?: number;
  /** The price of a package, when the delivery told one: it is in force from now on. */
  readonly price?: Omit<StatedPrice, 'atMs' | 'foodId'>;
  /** What its label says differently. */
  readonly label?: Pick<LabelNote, 'contains' | 'advisory'>;
}

/** What a delivery changed. */
export interface Delivery {
  /** Grams of this food on the shelf afterwards. */
  readonly onHandG: number;
  readonly again: boolean;
  /** True when it took the food off the shopping list; `listedG` is what is still to be bought of it. */
  readonly isOffList: boolean;
  readonly listedG?: number;
}

/** Records a delivery, and takes what came off the shopping list. */
export async function recordReceived(desk: Desk, received: Received): Promise<Delivery> {
  const { foodId, lot, cents, price, label } = received;
  const massG = checkMassG(received.massG);
  if (cents !== undefined) checkCents(cents);
  if (price) checkCents(price.priceCents);
  const atMs = checkWhen(received.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const onHandG = async () => sumG((await ledger.pantry()).filter((each) => each.foodId === foodId));
    if (await recordedBefore(ledger, received.requestKey))
      return { onHandG: await onHandG(), again: true, isOffList: false };
    const list = await boughtNotes(ledger, foodId, massG);
    await ledger.append({
      event: eventOf(ledger, desk, 'received', { ...received, atMs }),
      pantry: [
        {
          foodId,
          massG,
          ...(lot === undefined ? {} : { lot }),
          ...(cents === undefined ? {} : { cents }),
        },
      ],
      ...(price ? { prices: [{ foodId, ...price }] } : {}),
      ...(list.length > 0 ? { list } : {}),
      ...(label ? { labels: [{ foodId, state: 'changed' as const, ...label }] } : {}),
    });
    const stillListed = listNow(await ledger.listNotes()).find((item) => item.foodId === foodId);
    return {
      onHandG: await onHandG(),
      again: false,
      isOffList: list.length > 0 && !stillListed,
      ...(stillListed?.massG === undefined ? {} : { listedG: stillListed.massG }),
    };
  });
}
