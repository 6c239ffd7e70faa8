import type { Book } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Ledger, LedgerEvent, LedgerWriter } from './ledger.ts';

/** What every stock action needs: the ledger to write in, the kitchen's book, and the present instant. */
export interface Desk {
  readonly ledger: Ledger;
  readonly book: Book;
  readonly nowMs: number;
}

/** Who did it and when; `requestKey` makes the same request count once. */
export interface Doing {
  readonly who: string;
  readonly atMs: number;
  readonly requestKey?: string;
  readonly note?: string;
}

const MOST_PIECES = 100_000;
const LATEST_PAST_MS = 7 * 24 * 3_600_000;
const CLOCK_SLACK_MS = 60_000;

/** A count of pieces: whole, above zero, within what a kitchen makes. */
export function checkPieces(pieces: number): number {
  if (Number.isInteger(pieces) && pieces > 0 && pieces <= MOST_PIECES) return pieces;
  throw new Problem(
    'bad_quantity',
    `${Number.isFinite(pieces) ? pieces : 'That'} is not a count of pieces.`,
    'Write a whole number above zero, like "served 12 oat bars".',
  );
}

/** When it happened: not in the future, and not so long ago that it belongs to another week's record. */
export function checkWhen(atMs: number, nowMs: number): number {
  if (atMs > nowMs + CLOCK_SLACK_MS) {
    throw new Problem(
      'bad_quantity',
      'That time has not come yet.',
      'Give the time it happened; leave it out when it is happening now.',
    );
  }
  if (atMs < nowMs - LATEST_PAST_MS) {
    throw new Problem(
      'bad_quantity',
      'That was more than seven days ago.',
      'Log what happened in the last seven days; tell the dietitian about older food.',
    );
  }
  return atMs;
}

/** Builds the event of an action told by a person. */
export function eventOf(
  ledger: LedgerWriter,
  desk: Desk,
  kind: LedgerEvent['kind'],
  doing: Doing,
): LedgerEvent {
  return {
    id: ledger.newId(),
    kind,
    who: doing.who,
    atMs: doing.atMs,
    recordedMs: desk.nowMs,
    ...(doing.requestKey === undefined ? {} : { requestKey: doing.requestKey }),
    ...(doing.note === undefined ? {} : { note: doing.note }),
  };
}

/** Whether this very request was recorded before: a surface may deliver it twice. */
export async function recordedBefore(ledger: LedgerWriter, requestKey: string | undefined): Promise<boolean> {
  return requestKey !== undefined && (await ledger.eventByRequest(requestKey)) !== undefined;
}
