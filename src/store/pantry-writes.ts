import type { Kysely } from 'kysely';
import type { PantryEntry, PantryMovement } from '../kitchen/pantry/pantry.ts';
import type { Schema } from './schema.ts';

const mg = (massG: number): number => Math.round(massG * 1_000);

/** Writes what an event brings to the pantry; balances are kept in step with the movements. */
export async function appendPantry(
  db: Kysely<Schema>,
  workspace: string,
  eventId: string,
  entry: PantryEntry,
): Promise<void> {
  for (const movement of merged(entry.pantry ?? [])) await move(db, workspace, eventId, movement);
  const prices = (entry.prices ?? []).map((price) => ({
    workspace,
    event_id: eventId,
    food_id: price.foodId,
    cents: price.priceCents,
    package_mg: mg(price.packageG),
    package_name: price.packageName,
  }));
  if (prices.length > 0) await db.insertInto('prices').values(prices).execute();
  const labels = (entry.labels ?? []).map((note) => ({
    workspace,
    event_id: eventId,
    food_id: note.foodId,
    state: note.state,
    contains: JSON.stringify(note.contains),
    advisory: JSON.stringify(note.advisory),
  }));
  if (labels.length > 0) await db.insertInto('label_notes').values(labels).execute();
  const items = (entry.list ?? []).map((item) => ({
    workspace,
    event_id: eventId,
    name: item.name,
    food_id: item.foodId ?? null,
    mass_mg: item.massG === undefined ? null : mg(item.massG),
    wanted: item.wanted ? 1 : 0,
  }));
  if (items.length > 0) await db.insertInto('list_notes').values(items).execute();
}

async function move(
  db: Kysely<Schema>,
  workspace: string,
  eventId: string,
  { foodId, lot = '', massG, cents }: PantryMovement,
): Promise<void> {
  const mass_mg = mg(massG);
  await db
    .insertInto('pantry_movements')
    .values({ workspace, event_id: eventId, food_id: foodId, lot, mass_mg, cents: cents ?? null })
    .execute();
  await db
    .insertInto('pantry_balances')
    .values({ workspace, food_id: foodId, lot, mass_mg, first_event_id: eventId })
    .onConflict((conflict) =>
      conflict
        .columns(['workspace', 'food_id', 'lot'])
        .doUpdateSet((eb) => ({ mass_mg: eb('pantry_balances.mass_mg', '+', mass_mg) })),
    )
    .execute();
}

/** One movement of a food and lot an event, however often it took from it. */
function merged(movements: readonly PantryMovement[]): PantryMovement[] {
  const byKey = new Map<string, PantryMovement>();
  for (const movement of movements) {
    const key = `${movement.foodId} ${movement.lot ?? ''}`;
    const before = byKey.get(key);
    const cents = (before?.cents ?? 0) + (movement.cents ?? 0);
    const isPriced = before?.cents !== undefined || movement.cents !== undefined;
    byKey.set(key, {
      ...movement,
      massG: (before?.massG ?? 0) + movement.massG,
      ...(isPriced ? { cents } : {}),
    });
  }
  return [...byKey.values()];
}
