import type { Pan } from '../recipe.ts';

/** What a batch is scaled to. */
export type ScaleTarget =
  | { readonly kind: 'pieces'; readonly pieces: number }
  | { readonly kind: 'people'; readonly people: number; readonly piecesPerPerson: number }
  | { readonly kind: 'batches'; readonly factor: number }
  /** Pieces of a stated mass; without a count, as many as one recipe gives. */
  | { readonly kind: 'piece_mass'; readonly pieceG: number; readonly pieces?: number }
  /** As far as what is left of one ingredient goes. */
  | { readonly kind: 'ingredient'; readonly foodId: string; readonly availableG: number }
  /** Same thickness in other pans; `from` is the pan one recipe fills, where it is not the recipe's own. */
  | { readonly kind: 'pan'; readonly to: Pan; readonly count: number; readonly from?: Pan };

export interface ScaleOptions {
  /** Pieces on top, 0.1 is 10 %. */
  readonly spareShare?: number;
  /** How many pieces one recipe is cut into here, where the kitchen cuts otherwise than the recipe says. */
  readonly baseYield?: number;
  /** Cut the whole batch into this many pieces, whatever it was scaled to. */
  readonly cutInto?: number;
  /** Pans the kitchen owns, for what is left over from whole slabs. */
  readonly pans?: readonly Pan[];
}

/** More pieces than any kitchen makes at once: beyond it there is a typing error. */
export const MOST_PIECES = 100_000;
