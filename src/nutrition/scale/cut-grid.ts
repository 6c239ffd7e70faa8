/** How a slab is cut. Rows run along its length, columns across, so a piece is length/columns by width/rows. */
export interface CutGrid {
  readonly rows: number;
  readonly columns: number;
  readonly pieceLengthIn: number;
  readonly pieceWidthIn: number;
  /** Pieces the grid gives beyond those asked for. */
  readonly spare: number;
}

/** A piece longer than four times its width breaks in the hand. Common practice, no source. */
const LONGEST_PIECE = 4;

/**
 * A grid for `pieces` on a slab, pieces as near 3:2 as it goes. A number that only gives strips gets a grid of up
 * to three more, which are said to be spare.
 * @example cutGrid(24, 13, 9).rows // 4
 */
export function cutGrid(pieces: number, lengthIn: number, widthIn: number): CutGrid {
  let best: CutGrid | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  for (let spare = 0; spare <= 3; spare++) {
    const count = pieces + spare;
    for (let rows = 1; rows <= count; rows++) {
      if (count % rows !== 0) continue;
      const grid = gridOf(rows, count / rows, lengthIn, widthIn, spare);
      const cost = shapeCost(grid) + spare * 0.9;
      if (cost < bestCost - 1e-12) {
        best = grid;
        bestCost = cost;
      }
    }
    if (best && bestCost < Math.log(LONGEST_PIECE)) break;
  }
  return best ?? gridOf(1, pieces, lengthIn, widthIn, 0);
}

export const gridOf = (
  rows: number,
  columns: number,
  lengthIn: number,
  widthIn: number,
  spare: number,
): CutGrid => ({
  rows,
  columns,
  pieceLengthIn: lengthIn / columns,
  pieceWidthIn: widthIn / rows,
  spare,
});

/** Distance of the piece's shape from 3:2, either way round. */
function shapeCost(grid: CutGrid): number {
  const longer = Math.max(grid.pieceLengthIn, grid.pieceWidthIn);
  const shorter = Math.min(grid.pieceLengthIn, grid.pieceWidthIn);
  return Math.abs(Math.log(longer / shorter) - Math.log(1.5));
}
