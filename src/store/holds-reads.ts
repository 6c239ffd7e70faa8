import type { Kysely } from 'kysely';
import { holdsOf, newsOf, type Release, type Stay } from '../kitchen/stock/holds.ts';
import type { Holding, HoldingState, LoggedReading } from '../kitchen/stock/ledger.ts';
import { inParts } from './in-parts.ts';
import { readingOf } from './ledger-rows.ts';
import { notReversed } from './not-reversed.ts';
import { pantryView } from './pantry-reads.ts';
import type { Schema } from './schema.ts';

/** Food that was moved more often than this was looked after long ago. */
const MOST_MOVES = 6;

/** The holdings with what holds them back: a warm fridge, or a label that changed since they were made. */
export async function withHolds(
  db: Kysely<Schema>,
  workspace: string,
  holdings: readonly Holding[],
): Promise<readonly Holding[]> {
  if (holdings.length === 0) return holdings;
  const notes = await pantryView(db, workspace).labelNotes();
  const releases = await releasesIn(db, workspace);
  const stays = await staysOf(db, workspace, holdings);
  return holdings.map((holding) => {
    const news = newsOf(holding.batch, notes);
    const holds = holdsOf(holding.batch, stays.get(holding.id) ?? [], news, releases);
    return {
      ...holding,
      ...(news.length > 0 ? { labelNews: news } : {}),
      ...(holds.length > 0 ? { holds } : {}),
    };
  });
}

async function releasesIn(db: Kysely<Schema>, workspace: string): Promise<readonly Release[]> {
  const rows = await db
    .selectFrom('events as e')
    .innerJoin('movements as m', (join) =>
      join.onRef('m.workspace', '=', 'e.workspace').onRef('m.event_id', '=', 'e.id'),
    )
    .innerJoin('holdings as h', (join) =>
      join.onRef('h.workspace', '=', 'm.workspace').onRef('h.id', '=', 'm.holding_id'),
    )
    .select(['e.id', 'h.batch_id'])
    .where('e.workspace', '=', workspace)
    .where('e.kind', '=', 'released')
    .where(notReversed(workspace, 'e.id'))
    .execute();
  return rows.map((row) => ({ eventId: row.id, batchId: row.batch_id }));
}

interface Place {
  readonly location: string;
  readonly state: HoldingState;
  readonly eventId: string;
  readonly fromMs: number;
}

/** Where each holding stood, the present place first, with the last reading of each while it stood there. */
async function staysOf(
  db: Kysely<Schema>,
  workspace: string,
  holdings: readonly Holding[],
): Promise<ReadonlyMap<string, readonly Stay[]>> {
  const readings = new Map<string, LoggedReading | undefined>();
  const stays = new Map<string, Stay[]>();
  let open = holdings.map(({ id, batch, location, state, eventId, sinceMs }) => ({
    id,
    batch,
    place: { location, state, eventId, fromMs: sinceMs } as Place,
    untilMs: Number.MAX_SAFE_INTEGER,
  }));
  for (let moves = 0; open.length > 0 && moves <= MOST_MOVES; moves++) {
    for (const { id, place, untilMs } of open) {
      const key = `${place.location} ${untilMs}`;
      if (place.state === 'fridge' && !readings.has(key))
        readings.set(key, await lastReading(db, workspace, place.location, untilMs));
      const last = place.state === 'fridge' ? readings.get(key) : undefined;
      stays.set(id, [...(stays.get(id) ?? []), { ...place, ...(last ? { last } : {}) }]);
    }
    const moved = open.filter(({ place, batch }) => place.eventId !== batch.eventId);
    const left = await placesLeft(db, workspace, [...new Set(moved.map(({ place }) => place.eventId))]);
    open = moved.flatMap((each) => {
      const from = left.find((row) => row.by === each.place.eventId && row.batchId === each.batch.id);
      return from ? [{ ...each, place: from.place, untilMs: each.place.fromMs }] : [];
    });
  }
  return stays;
}

/** The places that these entries moved pieces out of. */
async function placesLeft(
  db: Kysely<Schema>,
  workspace: string,
  eventIds: readonly string[],
): Promise<readonly { readonly by: string; readonly batchId: string; readonly place: Place }[]> {
  const rows = await inParts(eventIds, (part) =>
    db
      .selectFrom('movements as m')
      .innerJoin('holdings as h', (join) =>
        join.onRef('h.workspace', '=', 'm.workspace').onRef('h.id', '=', 'm.holding_id'),
      )
      .selectAll('h')
      .select('m.event_id as by')
      .where('m.workspace', '=', workspace)
      .where('m.event_id', 'in', part)
      .where('m.pieces', '<', 0)
      .execute(),
  );
  return rows.map((row) => ({
    by: row.by,
    batchId: row.batch_id,
    place: {
      location: row.location,
      state: row.state as HoldingState,
      eventId: row.event_id,
      fromMs: row.since_ms,
    },
  }));
}

async function lastReading(
  db: Kysely<Schema>,
  workspace: string,
  location: string,
  untilMs: number,
): Promise<LoggedReading | undefined> {
  const row = await db
    .selectFrom('readings as r')
    .innerJoin('events as e', (join) =>
      join.onRef('e.workspace', '=', 'r.workspace').onRef('e.id', '=', 'r.event_id'),
    )
    .selectAll('r')
    .select('e.who')
    .where('r.workspace', '=', workspace)
    .where('r.location', '=', location)
    .where('r.at_ms', '<=', untilMs)
    .where(notReversed(workspace, 'r.event_id'))
    .orderBy('r.at_ms', 'desc')
    .orderBy('r.event_id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row && readingOf(row);
}
