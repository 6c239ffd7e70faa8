import type { Pan, Recipe } from '../recipe.ts';
import { type CutGrid, cutGrid, gridOf } from './cut-grid.ts';
import { panArea } from './pans.ts';

/** One kind of slab: so many alike, each cut alike. */
export interface Slab {
  readonly pan: Pan;
  readonly count: number;
  /** Share of the pan that is filled at the usual thickness; 1 is full. */
  readonly filled: number;
  /** Inches of the pan's length the mix takes: all of it, or what it is pressed to when it does not fill the pan. */
  readonly pressedLengthIn: number;
  readonly pieces: number;
  readonly cut: CutGrid;
}

export interface Slabs {
  readonly slabs: readonly Slab[];
  readonly pans: number;
  /** Pieces that would come on top if the last pan were filled; 0 when all are full. */
  readonly sparePlaces: number;
  /** The kitchen's largest pan and how many of it hold the same, when the recipe's own would be many. */
  readonly larger?: { readonly pan: Pan; readonly count: number };
}

/** From this many pans on, a larger pan is worth naming. */
const MANY_PANS = 4;

/** A slab may be this much thicker or thinner than the recipe's without changing how it sets (relative). */
const THICKNESS_TOLERANCE = 0.08;

/**
 * Whole pans for a batch, at the recipe's thickness: full ones, then the rest in a smaller pan the kitchen owns or
 * pressed to part of one. Undefined for what is not made in a pan.
 * @param share how many of `pan` the batch fills, 2.5 is two and a half.
 */
export function slabsFor(
  recipe: Recipe,
  pan: Pan,
  share: number,
  pieces: number,
  kitchenPans: readonly Pan[],
): Slabs {
  const perPan = pieces / share;
  const full = share > 1 - THICKNESS_TOLERANCE && share < 1 + 1e-6 ? 1 : Math.floor(share + 1e-6);
  const piecesInFull = Math.min(pieces, full === 0 ? 0 : Math.round(perPan) * full);
  const slabs: Slab[] = [];
  if (full > 0) slabs.push(...fullSlabs(recipe, pan, full, piecesInFull));
  const rest = pieces - piecesInFull;
  if (rest > 0) slabs.push(restSlab(recipe, pan, rest, rest / perPan, kitchenPans));
  const last = slabs.at(-1);
  const sparePlaces =
    last && last.filled < 1 ? Math.max(0, Math.round(perPan * (panArea(last.pan) / panArea(pan))) - rest) : 0;
  const pans = slabs.reduce((sum, slab) => sum + slab.count, 0);
  const larger = pans >= MANY_PANS ? largerPan(pan, share, kitchenPans) : undefined;
  return { slabs, pans, sparePlaces, ...(larger ? { larger } : {}) };
}

function largerPan(pan: Pan, share: number, kitchenPans: readonly Pan[]): Slabs['larger'] {
  const largest = kitchenPans.reduce((most, other) => (panArea(other) > panArea(most) ? other : most), pan);
  const ratio = panArea(largest) / panArea(pan);
  return ratio < 1.5 ? undefined : { pan: largest, count: Math.ceil(share / ratio - 1e-6) };
}

function fullSlabs(recipe: Recipe, pan: Pan, count: number, pieces: number): Slab[] {
  const each = Math.max(1, Math.round(pieces / count));
  const own =
    recipe.cut && recipe.pan?.id === pan.id && recipe.cut.rows * recipe.cut.columns === each
      ? recipe.cut
      : undefined;
  const cut = own
    ? gridOf(own.rows, own.columns, pan.lengthIn, pan.widthIn, 0)
    : cutGrid(each, pan.lengthIn, pan.widthIn);
  return [{ pan, count, filled: 1, pressedLengthIn: pan.lengthIn, pieces: each, cut }];
}

function restSlab(
  recipe: Recipe,
  pan: Pan,
  pieces: number,
  share: number,
  kitchenPans: readonly Pan[],
): Slab {
  const area = share * panArea(pan);
  const fitting = kitchenPans.find((other) => Math.abs(area / panArea(other) - 1) <= THICKNESS_TOLERANCE);
  if (fitting) {
    const cut = cutGrid(pieces, fitting.lengthIn, fitting.widthIn);
    return { pan: fitting, count: 1, filled: 1, pressedLengthIn: fitting.lengthIn, pieces, cut };
  }
  const smallest = kitchenPans
    .filter((other) => panArea(other) >= area && panArea(other) < panArea(pan))
    .sort((a, b) => panArea(a) - panArea(b))[0];
  const used = smallest ?? pan;
  const filled = Math.min(1, area / panArea(used));
  // What goes into the oven spreads over the whole pan; only a dough can be pressed to part of it.
  const pressedLengthIn = recipe.moistureLoss > 0 ? used.lengthIn : used.lengthIn * filled;
  return {
    pan: used,
    count: 1,
    filled,
    pressedLengthIn,
    pieces,
    cut: cutGrid(pieces, pressedLengthIn, used.widthIn),
  };
}
