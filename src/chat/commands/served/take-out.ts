import type { Batch, Holding } from '../../../kitchen/stock/ledger.ts';
import {
  CONSUMER_HOT_MS,
  CONSUMER_MS,
  HOT_DAY_F,
  type Moved,
  type MovingItem,
  recordMoved,
} from '../../../kitchen/stock/record-moved.ts';
import type { TakingItem } from '../../../kitchen/stock/record-taken.ts';
import { standingOf } from '../../../kitchen/stock/usable.ts';
import type { Answer } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import { itemsTaken } from '../../stock/taken.ts';
import { assumedWhen, whenDone } from '../../stock/when.ts';
import { askWhichStock } from '../../stock/which.ts';
import { clockText, holdingData, LOCAL_CODE, piecesOf } from '../../stock/words.ts';

/** "took out 12 at 14:00": from then on time is the only control. */
export async function takeOut(asked: Asked): Promise<Answered> {
  const desk = deskOf(asked);
  const items = await itemsTaken(asked, desk);
  const [item, ...also] = items ?? [];
  if (item === undefined) return askWhichStock(asked, 'served', await desk.ledger.holdings());
  const air = asked.slots.air_temp_f;
  const atMs = whenDone(asked, asked.slots.when);
  const held = await desk.ledger.holdings();
  const cold = held.filter(
    (holding) =>
      holding.state === 'fridge' && standingOf(holding, atMs, desk.book.settings.timeZone) === 'usable',
  );
  const anywhere = [
    ...new Set(cold.map((holding) => holding.location)),
    ...desk.book.settings.locations.filter(({ kind }) => kind !== 'freezer').map(({ id }) => id),
  ];
  const fromCold = ({ which, pieces }: TakingItem): MovingItem => ({
    which: { ...which, places: which.places ?? anywhere },
    pieces,
  });
  const moved = await recordMoved(desk, {
    ...doingOf(asked, atMs),
    ...fromCold(item),
    also: also.map(fromCold),
    to: 'out',
    ...(asked.slots.home === true || isHot(air)
      ? { consumer: typeof air === 'number' ? { airTempF: air } : {} }
      : {}),
  });
  const recipeIds = moved.to.map(({ batch }) => batch.recipeId);
  return {
    answer: outAnswer(asked, moved, atMs, outBefore(held, moved)),
    conversation: settled(asked, 'served', recipeIds),
  };
}

/** Pieces of the same kind that were out already: they may be the ones that go along. */
const outBefore = (held: readonly Holding[], { to }: Moved): Holding[] =>
  held.filter(
    ({ state, discardAtMs, batch }) =>
      state === 'out' &&
      discardAtMs !== undefined &&
      to.some((moved) => moved.batch.recipeId === batch.recipeId),
  );

/** What goes to a tailgate may be what was taken out just before; its shorter time then counts from there. */
function alreadyOut(asked: Asked, before: readonly Holding[]): string[] {
  const { home, air_temp_f: air } = asked.slots;
  if (home !== true && !isHot(air)) return [];
  const forMs = isHot(air) ? CONSUMER_HOT_MS : CONSUMER_MS;
  return before.map(
    ({ batch, pieces, sinceMs }) =>
      `${piecesOf(pieces, batch)} of ${batch.code} were out already, since ${clockText(asked, sinceMs)}. If these are the ones that go along, say "undo" and serve or throw them out by ${clockText(asked, sinceMs + forMs)}.`,
  );
}

function outAnswer(asked: Asked, moved: Moved, atMs: number, before: readonly Holding[]): Answer {
  const until = earliest(moved.to.flatMap(({ discardAtMs }) => discardAtMs ?? []));
  const codes = moved.to.map(({ batch }) => batch.code).join(', ');
  return {
    title: moved.again
      ? 'Already logged; the clock is running once.'
      : `${kindsOf(moved)} out since ${clockText(asked, atMs)}: ${until === undefined ? 'no clock, kept at room temperature' : `serve or throw out by ${clockText(asked, until)}`}. ${codes}.`,
    sections: [...(until === undefined ? [] : [ruleText(asked)]), ...assumedWhen(asked, atMs)].map(
      (text) => ({
        kind: 'text' as const,
        text,
      }),
    ),
    cautions: until === undefined ? [] : [...alreadyOut(asked, before), LOCAL_CODE],
    next: ['undo', 'stock'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: {
      logged: !moved.again,
      pieces: moved.pieces,
      outSinceMs: atMs,
      discardAtMs: until ?? null,
      out: moved.to.map(holdingData),
    },
  };
}

const earliest = (instants: readonly number[]): number | undefined =>
  instants.length === 0 ? undefined : Math.min(...instants);

/** "12 oat bars and 24 pumpkin oat muffins". */
function kindsOf({ to }: Moved): string {
  const kinds = new Map<string, { pieces: number; batch: Batch }>();
  for (const { batch, pieces } of to)
    kinds.set(batch.recipeId, { batch, pieces: pieces + (kinds.get(batch.recipeId)?.pieces ?? 0) });
  return [...kinds.values()].map(({ pieces, batch }) => piecesOf(pieces, batch)).join(' and ') || 'Nothing';
}
/** Who says how hot it is outside is not serving from the line: then the shorter rule counts for everybody. */
const isHot = (air: unknown): air is number => typeof air === 'number' && air > HOT_DAY_F;

function ruleText({ slots }: Asked): string {
  if (slots.home !== true && !isHot(slots.air_temp_f))
    return 'It must have left the fridge at 41 °F (5 °C) or below. Mark this time on the tray; it does not go back to the fridge (FDA Food Code model 3-501.19: 4 hours).';
  const air = slots.air_temp_f;
  return isHot(air)
    ? `At ${Math.round(air)} °F it is 1 hour: above 90 °F (USDA and FDA advice to consumers).`
    : 'For home and tailgate it is 2 hours, 1 hour above 90 °F (USDA and FDA advice to consumers): say "…, 93F" when it is hot.';
}
