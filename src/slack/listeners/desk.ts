import type { Answering, Said } from '../answering.ts';
import type { FormDoor } from '../form-door.ts';
import type { HomeBoard } from '../home/board.ts';
import type { InFlight } from '../in-flight.ts';
import type { Metrics } from '../metrics.ts';
import type { Seen } from '../seen.ts';
import type { Turn } from '../turns.ts';

/** What every listener needs. */
export interface Desk {
  readonly answering: Answering;
  readonly door: FormDoor;
  readonly board: HomeBoard;
  readonly inFlight: InFlight;
  readonly seen: Seen;
  readonly metrics: Metrics;
  readonly turn: Turn;
}

/**
 * Answers what was said, unless one of its keys was seen before; a stop waits for it. The first key names the request
 * for the ledger, which remembers longer than this process.
 */
export function answerOnce(
  desk: Desk,
  said: Said,
  keys: readonly (readonly [string, number])[],
): Promise<void> {
  return desk.inFlight.track(answerUnseen(desk, said, keys), 'answers');
}

async function answerUnseen(
  desk: Desk,
  said: Said,
  keys: readonly (readonly [string, number])[],
): Promise<void> {
  // Looking up and computing take the processor: acknowledgements that wait behind this one go out first.
  await desk.turn();
  // Not of Slack: there is nobody to answer.
  if (![said.place.user, said.place.channel].every(isId)) return;
  for (const [key, forMs] of keys) {
    if (!(await desk.seen.isFirst(`${said.place.workspace}:${key}`, forMs))) return desk.metrics.repeated();
  }
  const [first] = keys;
  await desk.answering.answer(first ? { ...said, requestKey: first[0] } : said);
}

/** As payloads are, not as they should be. */
export const isId = (id: unknown): boolean => typeof id === 'string' && id !== '';

/** Slack resends an event for up to a day, and then some. */
export const EVENT_REMEMBERED_MS = 25 * 60 * 60_000;
/** A signed request is refused after five minutes, so a replay comes within them. */
export const TRIGGER_REMEMBERED_MS = 10 * 60_000;
/** Two presses within this are one impatient finger. */
export const PRESS_REMEMBERED_MS = 3_000;
