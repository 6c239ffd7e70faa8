import { Problem } from '../../../nutrition/problem.ts';
import { requireUnit } from '../../../nutrition/units/unit.ts';
import type { Slots } from '../../slots.ts';
import { figure, grams, oneOf, piecesWord } from './figure-words.ts';
import { slotNumber, slotText } from './slot-values.ts';
import { finishedMassG, type Subject } from './subject.ts';

/** Which part of a subject the figures are for. */
export interface Basis {
  /** "a bar", "100 g", "the batch". */
  readonly words: string;
  /** Share of the subject's amounts. */
  readonly factor: number;
  /** Grams as eaten. */
  readonly massG: number;
  /** True when pieces were cut, so that their evenness counts. */
  readonly cut: boolean;
}

/** The basis that was asked for, else a piece of a recipe or the whole of a list. Throws on an impossible one. */
export function basisOf(subject: Subject, slots: Slots): Basis {
  const per = slotText(slots, 'per');
  if (per !== undefined && /^100\s*g/.test(per)) return ofMass(subject, 100);
  if (per === 'batch') return ofBatch(subject);
  const { portion, unit } = portionOf(slots);
  if (subject.recipe && portion !== undefined && unit !== undefined) {
    const known = requireUnit(unit);
    if (known.kind === 'mass') return ofMass(subject, portion * known.g);
  }
  const isPieces = subject.recipe !== undefined || subject.pieces > 1 || per === 'piece';
  if (!isPieces) return ofBatch(subject);
  return ofPieces(subject, subject.recipe ? (slotNumber(slots, 'quantity') ?? portion ?? 1) : 1);
}

/** A mass said for a recipe: "100 g of oat bar". A count of pieces has no mass unit and stays a count. */
function portionOf(slots: Slots): { portion?: number; unit?: string } {
  const portion = slotNumber(slots, 'portion');
  const unit = slotText(slots, 'portion_unit');
  const isMass = unit !== undefined && /^(?:g|kg|oz|lb)$/.test(unit);
  return { ...(portion !== undefined && { portion }), ...(isMass && { unit }) };
}

function ofPieces(subject: Subject, count: number): Basis {
  if (!(count > 0)) {
    throw new Problem(
      'bad_quantity',
      'How many pieces must be more than none.',
      'Write a number, like "2 bars".',
    );
  }
  const factor = ((1 - subject.handlingLoss) * count) / subject.pieces;
  const words =
    count === 1 ? oneOf(subject.pieceUnit) : `${figure(count, 'g')} ${piecesWord(subject.pieceUnit, count)}`;
  return { words, factor, massG: (finishedMassG(subject) * count) / subject.pieces, cut: subject.pieces > 1 };
}

function ofMass(subject: Subject, massG: number): Basis {
  const wholeG = finishedMassG(subject);
  if (!(wholeG > 0)) {
    throw new Problem(
      'not_possible',
      'There is nothing in this mix to weigh.',
      'Add an ingredient with an amount.',
    );
  }
  return { words: grams(massG), factor: ((1 - subject.handlingLoss) * massG) / wholeG, massG, cut: false };
}

function ofBatch(subject: Subject): Basis {
  const massG = finishedMassG(subject);
  const all = subject.amounts.length > 1 ? `all ${grams(massG)}` : grams(massG);
  return { words: subject.recipe ? 'the batch' : all, factor: 1 - subject.handlingLoss, massG, cut: false };
}
