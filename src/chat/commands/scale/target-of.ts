import type { Kitchen } from '../../../kitchen/kitchen.ts';
import type { Food } from '../../../nutrition/food.ts';
import { massOf } from '../../../nutrition/portion/mass-of.ts';
import { commonPackage } from '../../../nutrition/portion/package-portion.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { findPan } from '../../../nutrition/scale/pans.ts';
import type { ScaleOptions, ScaleTarget } from '../../../nutrition/scale/target.ts';
import { readUnit } from '../../../nutrition/units/unit.ts';
import { slotNumber, slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { foodInRecipe } from './line-meant.ts';

export interface Wanted {
  readonly target: ScaleTarget;
  readonly options: ScaleOptions;
}

const PEOPLE = new Set(['person', 'people', 'athlete', 'player']);
const BATCH = new Set(['batch', 'recipe', 'mix']);
const PAN = new Set(['pan', 'slab', 'tray', 'sheet']);

/** What the slots ask for; undefined when no size was said. @throws Problem for a size that cannot be read. */
export function targetOf(recipe: Recipe, kitchen: Kitchen, slots: Slots): Wanted | undefined {
  const pieces = slotNumber(slots, 'pieces');
  const extra = slotNumber(slots, 'extra_pct');
  const quantity = slotNumber(slots, 'quantity');
  const target = sizeOf(recipe, kitchen, slots, quantity);
  if (!target && pieces === undefined) return undefined;
  const baseYield = slotNumber(slots, 'base_yield') ?? (cutsEachRecipe(target, pieces) ? pieces : undefined);
  return {
    target: target ?? { kind: 'batches', factor: 1 },
    options: {
      pans: kitchen.book.settings.pans,
      ...(extra === undefined ? {} : { spareShare: extra / 100 }),
      ...(baseYield === undefined ? {} : { baseYield }),
      ...(pieces === undefined || baseYield === pieces ? {} : { cutInto: pieces }),
    },
  };
}

/** "40 bars cut into 8": every slab is cut into 8, and 40 of those are wanted. */
const cutsEachRecipe = (target: ScaleTarget | undefined, pieces: number | undefined): boolean =>
  pieces !== undefined &&
  (target?.kind === 'people' || (target?.kind === 'pieces' && target.pieces !== pieces));

function sizeOf(
  recipe: Recipe,
  kitchen: Kitchen,
  slots: Slots,
  quantity: number | undefined,
): ScaleTarget | undefined {
  const pieceG = slotNumber(slots, 'piece_g');
  const pan = slotText(slots, 'pan');
  const factor = slotNumber(slots, 'factor');
  if (limits(slots)) return ingredientTarget(recipe, kitchen, slots);
  if (pieceG !== undefined)
    return { kind: 'piece_mass', pieceG, ...(quantity === undefined ? {} : { pieces: quantity }) };
  if (pan !== undefined && quantity === undefined) return panTarget(kitchen, slots, pan);
  if (quantity !== undefined) return quantityTarget(kitchen, slots, quantity);
  const pans = slotNumber(slots, 'pan_count');
  if (pans !== undefined) return { kind: 'batches', factor: pans };
  return factor === undefined ? undefined : { kind: 'batches', factor };
}

/** An amount of an ingredient limits the batch unless a count says how much is made. */
export const limits = (slots: Slots): boolean =>
  slots.ingredient !== undefined &&
  slots.amount !== undefined &&
  slots.base_yield === undefined &&
  (slots.limit_by === 'ingredient' || slots.quantity === undefined);

function quantityTarget(kitchen: Kitchen, slots: Slots, quantity: number): ScaleTarget {
  const unit = slotText(slots, 'unit') ?? '';
  const measure = readUnit(slotText(slots, 'portion_unit') ?? '');
  if (measure?.kind === 'volume')
    throw new Problem(
      'not_possible',
      `A piece has a weight here, and no size in ${measure.many}.`,
      `Write what one weighs: "${quantity} pieces, 60 g each".`,
    );
  const portion = measure?.kind === 'mass' ? undefined : slotNumber(slots, 'portion');
  if (PEOPLE.has(unit) || portion !== undefined) {
    return {
      kind: 'people',
      people: quantity,
      piecesPerPerson: portion ?? kitchen.book.settings.piecesPerPerson,
    };
  }
  return BATCH.has(unit) || PAN.has(unit)
    ? { kind: 'batches', factor: quantity }
    : { kind: 'pieces', pieces: quantity };
}

function panTarget(kitchen: Kitchen, slots: Slots, pan: string): ScaleTarget {
  const { pans } = kitchen.book.settings;
  const from = slotText(slots, 'pan_from');
  return {
    kind: 'pan',
    to: findPan(pan, pans),
    count: slotNumber(slots, 'pan_count') ?? 1,
    ...(from === undefined ? {} : { from: findPan(from, pans) }),
  };
}

function ingredientTarget(recipe: Recipe, kitchen: Kitchen, slots: Slots): ScaleTarget {
  const words = slotText(slots, 'ingredient') ?? '';
  const food = foodInRecipe(recipe, kitchen.book.foods, words);
  if (!food) {
    const used = recipe.lines.map((line) => kitchen.book.foods.get(line.foodId)?.name ?? line.foodId);
    throw new Problem(
      'not_possible',
      `${recipe.title} does not use ${words}.`,
      `It uses ${used.join(', ')}.`,
    );
  }
  return { kind: 'ingredient', foodId: food.id, availableG: available(food, slots).massG };
}

/**
 * Grams of what is left; of a range the lesser, so that nothing runs out. A jar whose size is not on file is taken
 * as the usual one, and `assumed` says so.
 */
export function available(food: Food, slots: Slots): { readonly massG: number; readonly assumed?: string } {
  const amount = slotNumber(slots, 'amount_min') ?? slotNumber(slots, 'amount') ?? 0;
  const unit = slotText(slots, 'amount_unit') ?? '';
  try {
    return { massG: massOf(food, amount, unit).massG };
  } catch (error) {
    const usual =
      error instanceof Problem && error.code === 'no_portion'
        ? commonPackage(food, readUnit(unit)?.id ?? unit)
        : undefined;
    if (!usual) throw error;
    const size = Math.round(usual.massG);
    return {
      massG: amount * usual.massG,
      assumed: `One ${usual.unit} of ${food.name} ${usual.qualifier} (${size} g).`,
    };
  }
}
