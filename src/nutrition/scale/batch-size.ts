import { Problem } from '../problem.ts';
import type { Recipe } from '../recipe.ts';
import { panArea } from './pans.ts';
import type { RecipeTable } from './recipe-table.ts';
import { MOST_PIECES, type ScaleOptions, type ScaleTarget } from './target.ts';

/** How much of a recipe is made, and into how many pieces. */
export interface BatchSize {
  /** Recipe yields. */
  readonly factor: number;
  readonly pieces: number;
  /** Grams of the limiting ingredient that stay over. */
  readonly ingredientLeftG?: number;
}

/**
 * Turns a target into a factor and a whole number of pieces.
 * @throws Problem `bad_quantity` or `not_possible` that says what to write instead.
 * @example batchSize(makesSixteen, table, { kind: 'pieces', pieces: 40 }, {}) // { factor: 2.5, pieces: 40 }
 */
export function batchSize(
  recipe: Recipe,
  table: RecipeTable,
  target: ScaleTarget,
  options: ScaleOptions,
): BatchSize {
  const yieldPieces = options.baseYield ?? recipe.yieldPieces;
  checkPieces(yieldPieces, recipe);
  const spare = 1 + (options.spareShare ?? 0);
  const size = sizeOf(recipe, table, target, yieldPieces, spare);
  checkPieces(size.pieces, recipe);
  if (!(size.factor > 0) || size.factor * recipe.yieldPieces > MOST_PIECES * 10) throw outOfReach(recipe);
  if (options.cutInto === undefined) return size;
  checkPieces(options.cutInto, recipe);
  return { ...size, pieces: Math.round(options.cutInto) };
}

function sizeOf(
  recipe: Recipe,
  table: RecipeTable,
  target: ScaleTarget,
  yieldPieces: number,
  spare: number,
): BatchSize {
  switch (target.kind) {
    case 'pieces':
      return toPieces(target.pieces * spare, yieldPieces);
    case 'people':
      return toPieces(target.people * target.piecesPerPerson * spare, yieldPieces);
    case 'batches':
      return { factor: target.factor * spare, pieces: wholePieces(yieldPieces * target.factor * spare) };
    case 'piece_mass':
      return toPieceMass(recipe, table, target, spare);
    case 'ingredient':
      return toIngredient(recipe, table, target, yieldPieces);
    case 'pan':
      return toPan(recipe, target, yieldPieces);
    default:
      return target satisfies never;
  }
}

const toPieces = (wanted: number, yieldPieces: number): BatchSize => {
  const pieces = Math.ceil(wanted - 1e-9);
  return { factor: pieces / yieldPieces, pieces };
};

/** A whole number of pieces; what a fraction of a piece would hold goes into the others. */
const wholePieces = (pieces: number): number =>
  pieces > 0 ? Math.max(1, Math.floor(pieces + 1e-9)) : pieces;

function toPieceMass(
  recipe: Recipe,
  table: RecipeTable,
  target: ScaleTarget & { kind: 'piece_mass' },
  spare: number,
): BatchSize {
  if (!(target.pieceG >= 1 && target.pieceG <= 5000)) {
    throw new Problem(
      'bad_quantity',
      `A ${recipe.pieceUnit} of ${target.pieceG} g is out of reach.`,
      'Write grams between 1 and 5,000, for example "40 bars of 60 g".',
    );
  }
  if (target.pieces === undefined) {
    const pieces = Math.floor((table.finishedG * spare) / target.pieceG + 1e-9);
    if (pieces < 1)
      throw new Problem(
        'not_possible',
        `One batch is ${Math.round(table.finishedG)} g, less than one piece.`,
        `Write how many, for example "12 of ${target.pieceG} g".`,
      );
    return { factor: (pieces * target.pieceG) / table.finishedG, pieces };
  }
  const pieces = Math.ceil(target.pieces * spare - 1e-9);
  return { factor: (pieces * target.pieceG) / table.finishedG, pieces };
}

function toIngredient(
  recipe: Recipe,
  table: RecipeTable,
  target: ScaleTarget & { kind: 'ingredient' },
  yieldPieces: number,
): BatchSize {
  const needG = table.lines.reduce(
    (sum, { line }) => (line.foodId === target.foodId ? sum + line.massG : sum),
    0,
  );
  if (needG === 0) {
    throw new Problem(
      'not_possible',
      `${recipe.title} does not use that ingredient.`,
      `It uses ${table.lines.map(({ food }) => food.name).join(', ')}.`,
    );
  }
  const pieces = Math.floor((target.availableG / needG) * yieldPieces + 1e-9);
  if (pieces < 1) {
    const perPieceG = Math.ceil(needG / yieldPieces);
    throw new Problem(
      'not_possible',
      `That is not enough for one ${recipe.pieceUnit}.`,
      `One ${recipe.pieceUnit} takes ${perPieceG} g of it.`,
    );
  }
  const factor = pieces / yieldPieces;
  return { factor, pieces, ingredientLeftG: Math.max(0, target.availableG - factor * needG) };
}

function toPan(recipe: Recipe, target: ScaleTarget & { kind: 'pan' }, yieldPieces: number): BatchSize {
  const from = target.from ?? recipe.pan;
  if (!from) {
    throw new Problem(
      'needs_more',
      `${recipe.title} is not made in a pan.`,
      `Write a number of pieces, for example "40 ${recipe.pieceUnit}s".`,
    );
  }
  const factor = (panArea(target.to) * target.count) / panArea(from);
  return { factor, pieces: Math.max(1, Math.round(yieldPieces * factor)) };
}

function checkPieces(pieces: number, recipe: Recipe): void {
  if (Number.isFinite(pieces) && pieces >= 1 && pieces <= MOST_PIECES) return;
  throw outOfReach(recipe, pieces);
}

const outOfReach = (recipe: Recipe, pieces?: number): Problem =>
  new Problem(
    'bad_quantity',
    pieces !== undefined && pieces <= 0
      ? `${pieces} is not a number of pieces to make.`
      : `That is more than a kitchen makes at once (${MOST_PIECES.toLocaleString('en-US')} pieces).`,
    `Write a whole number from 1 to ${MOST_PIECES.toLocaleString('en-US')}, for example "40 ${recipe.pieceUnit}s".`,
  );
