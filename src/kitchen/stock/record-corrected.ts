import { Problem } from '../../nutrition/problem.ts';
import { dateOf } from '../time/zone.ts';
import { checkPieces, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Batch, LedgerWriter } from './ledger.ts';

export interface Correcting extends Doing {
  /** How many were really made. */
  readonly pieces: number;
  /** What was logged, if it was said: "38 not 40". */
  readonly piecesWas?: number;
  readonly code?: string;
  readonly recipeId?: string;
}

export interface Corrected {
  readonly batch: Batch;
  readonly before: number;
  readonly after: number;
  readonly again: boolean;
}

const RECENT_MS = 7 * 24 * 3_600_000;

/**
 * Puts the number made of a batch right, as an entry of its own: the batch named, else the last one this person made.
 * What was served since stays served.
 */
export async function recordCorrected(desk: Desk, correcting: Correcting): Promise<Corrected> {
  checkPieces(correcting.pieces);
  return desk.ledger.write(async (ledger) => {
    const batch = await batchMeant(desk, ledger, correcting);
    const before = await piecesMade(ledger, batch);
    if (await recordedBefore(ledger, correcting.requestKey))
      return { batch, before, after: before, again: true };
    const difference = correcting.pieces - before;
    const held = (await ledger.holdings()).filter((holding) => holding.batch.id === batch.id);
    const holding = held.find(({ pieces }) => pieces + difference >= 0);
    if (!holding) {
      throw new Problem(
        'not_possible',
        `Batch ${batch.code} has too few pieces left to have been ${correcting.pieces}.`,
        'Count what is there, like "counted 5 oat bars".',
      );
    }
    if (difference === 0) return { batch, before, after: before, again: false };
    await ledger.append({
      event: eventOf(ledger, desk, 'corrected', {
        ...correcting,
        note: `made ${correcting.pieces} not ${before}`,
      }),
      movements: [{ holdingId: holding.id, pieces: difference }],
    });
    return { batch, before, after: correcting.pieces, again: false };
  });
}

async function batchMeant(desk: Desk, ledger: LedgerWriter, correcting: Correcting): Promise<Batch> {
  const { code, recipeId, piecesWas, who } = correcting;
  const recent =
    code === undefined ? await madeBy(desk, ledger, who) : await ledger.batches({ codes: [code] });
  const fitting = [];
  for (const batch of recent) {
    if (recipeId !== undefined && batch.recipeId !== recipeId) continue;
    if (piecesWas !== undefined && (await piecesMade(ledger, batch)) !== piecesWas) continue;
    fitting.push(batch);
  }
  const last = fitting.at(-1);
  if (last) return last;
  throw new Problem(
    'not_found',
    piecesWas === undefined
      ? 'You have logged no batch that this could correct.'
      : `You have logged no batch of ${piecesWas} in the last seven days.`,
    'Name the batch, like "B3 made 38 not 40", or count what is there: "counted 25 oat bars".',
  );
}

/** Batches this person logged in the last seven days, oldest first. */
async function madeBy(desk: Desk, ledger: LedgerWriter, who: string): Promise<readonly Batch[]> {
  const events = await ledger.events(desk.nowMs - RECENT_MS, desk.nowMs + 1);
  // A batch may be logged up to seven days after it was made.
  const madeFrom = dateOf(desk.nowMs - 2 * RECENT_MS, desk.book.settings.timeZone);
  const own = new Set(
    events.filter((event) => event.kind === 'made' && event.who === who).map(({ id }) => id),
  );
  const batches = (await ledger.batches({ madeFrom })).filter((batch) => own.has(batch.eventId));
  return [...batches].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** What the batch was made as, with earlier corrections. */
async function piecesMade(ledger: LedgerWriter, batch: Batch): Promise<number> {
  const history = await ledger.historyOf(batch.id);
  const undone = new Set(history.flatMap(({ event }) => event.reverses ?? []));
  return history
    .filter(({ event }) => event.kind === 'corrected' && !undone.has(event.id))
    .reduce((sum, { pieces }) => sum + pieces, batch.pieces);
}
