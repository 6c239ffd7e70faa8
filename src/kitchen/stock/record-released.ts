import { Problem } from '../../nutrition/problem.ts';
import { checkWhen, type Desk, type Doing, eventOf, recordedBefore } from './desk.ts';
import type { Holding } from './ledger.ts';

export interface Releasing extends Doing {
  readonly codes: readonly string[];
  /** Why, in staff's own words; kept with the entry. */
  readonly note: string;
}

export interface Released {
  /** As they were held. */
  readonly held: readonly Holding[];
  readonly again: boolean;
}

/**
 * Records that staff decided that held batches may go on, and why. It ends what was on record until then: a warm reading
 * or label told later holds them again. The entry moves no pieces, it only stands beside those it is about.
 * @throws Problem `not_possible` when one of them is not held.
 */
export async function recordReleased(desk: Desk, releasing: Releasing): Promise<Released> {
  const atMs = checkWhen(releasing.atMs, desk.nowMs);
  return desk.ledger.write(async (ledger) => {
    const all = await ledger.holdings();
    const held = all.filter(({ batch, holds }) => holds && releasing.codes.includes(batch.code));
    if (await recordedBefore(ledger, releasing.requestKey)) return { held, again: true };
    const free = releasing.codes.filter((code) => !held.some(({ batch }) => batch.code === code));
    if (free.length > 0) {
      const codes = [...new Set(all.flatMap(({ batch, holds }) => (holds ? [batch.code] : [])))];
      throw new Problem(
        'not_possible',
        `${free.join(', ')}: not held. Nothing was recorded.`,
        codes.length > 0 ? `Held are ${codes.join(', ')}.` : 'Nothing is held; see "stock".',
      );
    }
    await ledger.append({
      event: eventOf(ledger, desk, 'released', { ...releasing, atMs }),
      movements: held.map(({ id }) => ({ holdingId: id, pieces: 0 })),
    });
    return { held, again: false };
  });
}
