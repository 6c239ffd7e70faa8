import type { Desk, Doing } from '../../kitchen/stock/desk.ts';
import type { Asked } from '../command.ts';

/** The asker's ledger, the kitchen's book and the present instant. */
export function deskOf(asked: Asked): Desk {
  const { kitchen, request } = asked;
  return { ledger: kitchen.ledgers(request.asker.workspace), book: kitchen.book, nowMs: request.nowMs };
}

/** Who does it and when; the surface's request key makes a repeated delivery count once. */
export function doingOf(asked: Asked, atMs: number, note?: string): Doing {
  const { asker, requestKey } = asked.request;
  return {
    who: asker.who,
    atMs,
    ...(requestKey === undefined ? {} : { requestKey }),
    ...(note === undefined ? {} : { note }),
  };
}
