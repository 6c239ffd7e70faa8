import { Problem } from '../../nutrition/problem.ts';
import { checkWhen, type Desk, type Doing, eventOf, recordedBefore } from '../stock/desk.ts';
import type { EventKind } from '../stock/ledger.ts';
import { checkCents, checkMassG } from './amounts.ts';
import type { LabelNote, PantryEntry, StatedPrice } from './pantry.ts';
import { sumG, takeFrom } from './uses.ts';

export interface PantryChange {
  readonly beforeG: number;
  readonly afterG: number;
  readonly again: boolean;
}

export interface OfFood extends Doing {
  readonly foodId: string;
  readonly massG: number;
  readonly lot?: string;
}

/** Records how much of a food is really on the shelf: fewer grams leave it first in, more are added. */
export async function recordPantryCounted(desk: Desk, counted: OfFood): Promise<PantryChange> {
  const { foodId, lot } = counted;
  const massG = checkMassG(counted.massG, true);
  const atMs = checkWhen(counted.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const held = (await ledger.pantry()).filter(
      (each) =>
        each.foodId === foodId && (lot === undefined || each.lot?.toLowerCase() === lot.toLowerCase()),
    );
    const beforeG = sumG(held);
    if (await recordedBefore(ledger, counted.requestKey)) return { beforeG, afterG: beforeG, again: true };
    const added = { foodId, massG: massG - beforeG, ...(lot === undefined ? {} : { lot }) };
    await ledger.append({
      event: eventOf(ledger, desk, 'counted', { ...counted, atMs }),
      pantry: massG < beforeG ? takeFrom(held, foodId, beforeG - massG).movements : [added],
    });
    return { beforeG, afterG: massG, again: false };
  });
}

/**
 * Records food from the pantry that was thrown out; `all` is what is on the shelf.
 * @throws Problem `not_possible` when the shelf has less.
 */
export async function recordPantryTossed(
  desk: Desk,
  tossed: Omit<OfFood, 'massG'> & { readonly massG: number | 'all' },
): Promise<PantryChange> {
  const { foodId, lot } = tossed;
  if (tossed.massG !== 'all') checkMassG(tossed.massG);
  const atMs = checkWhen(tossed.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const own = (await ledger.pantry()).filter((each) => each.foodId === foodId);
    const held =
      lot === undefined ? own : own.filter((each) => each.lot?.toLowerCase() === lot.toLowerCase());
    const beforeG = sumG(held);
    if (await recordedBefore(ledger, tossed.requestKey)) return { beforeG, afterG: beforeG, again: true };
    const massG = tossed.massG === 'all' ? beforeG : tossed.massG;
    if (massG > beforeG + 0.0005 || beforeG === 0) throw notThere(desk, foodId, beforeG);
    await ledger.append({
      event: eventOf(ledger, desk, 'tossed', { ...tossed, atMs }),
      pantry: takeFrom(held, foodId, massG).movements,
    });
    return { beforeG, afterG: beforeG - massG, again: false };
  });
}

function notThere(desk: Desk, foodId: string, beforeG: number): Problem {
  const name = desk.book.foods.get(foodId)?.name ?? foodId;
  return new Problem(
    'not_possible',
    beforeG > 0
      ? `The pantry knows of ${Math.round(beforeG)} g of ${name} only.`
      : `The pantry has no ${name.toLowerCase()} on record.`,
    `Put it right first, like "counted 500 g ${name.toLowerCase()}", or toss less.`,
  );
}

/** Records the price of a package. */
export function recordPrice(desk: Desk, told: Doing & { readonly price: Omit<StatedPrice, 'atMs'> }) {
  checkCents(told.price.priceCents);
  checkMassG(told.price.packageG);
  return recordTold(desk, 'priced', told, { prices: [told.price] });
}

/** Records what was told of one label, or of every label that goes by the word that was said. */
export const recordLabels = (desk: Desk, told: Doing & { readonly labels: readonly LabelNote[] }) =>
  recordTold(desk, 'label', told, { labels: told.labels });

function recordTold(
  desk: Desk,
  kind: EventKind,
  doing: Doing,
  entry: PantryEntry,
): Promise<{ readonly again: boolean }> {
  return desk.ledger.write(async (ledger) => {
    if (await recordedBefore(ledger, doing.requestKey)) return { again: true };
    await ledger.append({ event: eventOf(ledger, desk, kind, doing), ...entry });
    return { again: false };
  });
}
