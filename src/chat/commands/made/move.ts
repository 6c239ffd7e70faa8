import { placeName, placesCalled } from '../../../kitchen/stock/places.ts';
import { type Moved, recordMoved } from '../../../kitchen/stock/record-moved.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { deskOf, doingOf } from '../../stock/desk.ts';
import { settled } from '../../stock/merged.ts';
import { whenDone } from '../../stock/when.ts';
import { askWhichStock, oneRecipe, whichSaid } from '../../stock/which.ts';
import { holdingData, holdingLine, LOCAL_CODE, piecesOf, untilText } from '../../stock/words.ts';

const THAW = /\b(?:thaw|defrost)/i;
const FREEZE = /\b(?:freez|froze)/i;

/** "move 20 oat bars to the freezer", "thawed 20 oat bars". */
export async function move(asked: Asked): Promise<Answered> {
  const { book } = asked.kitchen;
  const desk = deskOf(asked);
  const { from, to } = wayOf(asked);
  const { slots } = asked;
  const said = await whichSaid({ ...asked, slots: { ...slots, location: from, made: undefined } }, desk);
  const there = (await desk.ledger.holdings()).filter(
    (holding) => said.places === undefined || said.places.includes(holding.location),
  );
  const which = oneRecipe(asked, there, said);
  if (!which) return askWhichStock(asked, 'made', there);
  const moved = await recordMoved(desk, {
    ...doingOf(asked, whenDone(asked, slots.made)),
    which,
    pieces: typeof slots.quantity === 'number' ? slots.quantity : 'all',
    to,
  });
  const recipeIds = moved.to.map(({ batch }) => batch.recipeId);
  return {
    answer: movedAnswer(asked, moved, placeName(book, to)),
    conversation: settled(asked, 'made', recipeIds),
  };
}

/** From where and to where; thawing means out of the freezer, freezing into it. */
function wayOf(asked: Asked): { from: string | undefined; to: string } {
  const { slots, request, kitchen } = asked;
  const { locations } = kitchen.book.settings;
  const idOf = (kind: 'fridge' | 'freezer') => locations.find((place) => place.kind === kind)?.id;
  const thawed = THAW.test(request.text) || isFreezer(asked, slots.location_from);
  const from = text(slots.location_from) ?? (thawed ? idOf('freezer') : undefined);
  const to = text(slots.location) ?? idOf(FREEZE.test(request.text) && !thawed ? 'freezer' : 'fridge');
  const place = to === undefined || (to === from && !thawed) ? undefined : placesCalled(kitchen.book, to)[0];
  if (!place || (slots.location === undefined && !thawed && !FREEZE.test(request.text))) {
    throw new Problem(
      'needs_more',
      'Where to?',
      `Say the place, like "move 20 oat bars to the freezer". Places: ${locations.map(({ name }) => name).join(', ')}.`,
    );
  }
  return { from, to: place.id };
}

const text = (slot: unknown): string | undefined => (typeof slot === 'string' ? slot : undefined);

function isFreezer({ kitchen }: Asked, words: unknown): boolean {
  return typeof words === 'string' && placesCalled(kitchen.book, words)[0]?.kind === 'freezer';
}

function movedAnswer(asked: Asked, moved: Moved, toName: string) {
  const [first] = moved.to;
  const what = first ? piecesOf(moved.pieces, first.batch) : 'nothing';
  const thawed = moved.from.some(({ holding }) => holding.state === 'freezer') && first?.state !== 'freezer';
  const title = moved.again
    ? 'Already logged; nothing was moved twice.'
    : `${what} ${thawed ? 'thawed' : 'moved'} to ${toName}: ${moved.to.map((holding) => `${holding.batch.code} ${untilText(asked, holding)}`).join('; ')}.`;
  return {
    title,
    sections: [
      ...(moved.to.length > 1
        ? [{ kind: 'list' as const, items: moved.to.map((holding) => holdingLine(asked, holding)) }]
        : []),
      ...(thawed
        ? [
            {
              kind: 'text' as const,
              text: 'Days in the freezer are not counted; days used before stay used (FDA Food Code 3-501.18). Write the new use-by on the label.',
            },
          ]
        : []),
    ],
    cautions: [LOCAL_CODE],
    next: ['undo', ...(first ? [`label ${first.batch.code}`] : [])].map((says) => ({ label: says, says })),
    audience: 'channel' as const,
    data: { logged: !moved.again, pieces: moved.pieces, to: moved.to.map(holdingData) },
  };
}
