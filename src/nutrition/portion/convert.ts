import type { Food } from '../food.ts';
import { Problem } from '../problem.ts';
import { readUnit, requireUnit, type Unit } from '../units/unit.ts';
import { type MassReading, massOf } from './mass-of.ts';

/** A conversion: the amount in the unit asked for, and the food's portion it leaned on, if any. */
export interface Conversion {
  readonly amount: number;
  readonly unit: Unit;
  /** Grams in between, when volume and weight were crossed through a food. */
  readonly massG?: number;
  readonly via?: MassReading;
}

/**
 * Converts an amount. Volume to volume and weight to weight are exact (NIST); between the two a food is needed.
 * @throws Problem `needs_more` without a food, `no_portion`, `unknown_unit`.
 * @example convert(16, 'tbsp', 'cup').amount // 1
 */
export function convert(
  amount: number,
  from: string,
  to: string,
  food?: Food,
  qualifier?: string,
): Conversion {
  const target = requireUnit(to);
  if (food) {
    const known = sameKind(amount, from, target);
    return known ?? throughFood(food, amount, from, target, qualifier);
  }
  const source = requireUnit(from);
  const direct = sameKind(amount, from, target);
  if (direct) return direct;
  throw new Problem(
    'needs_more',
    `From ${source.many} to ${target.many} depends on the food.`,
    `Name the food, for example "2 Tbsp honey in grams".`,
  );
}

function sameKind(amount: number, from: string, target: Unit): Conversion | undefined {
  const source = readUnit(from);
  if (!source) return undefined;
  if (source.kind === 'volume' && target.kind === 'volume') {
    return { amount: (amount * source.ml) / target.ml, unit: target };
  }
  if (source.kind === 'mass' && target.kind === 'mass') {
    return { amount: (amount * source.g) / target.g, unit: target };
  }
  return source.id === target.id ? { amount, unit: target } : undefined;
}

function throughFood(
  food: Food,
  amount: number,
  from: string,
  target: Unit,
  qualifier: string | undefined,
): Conversion {
  const via = massOf(food, amount, from, qualifier);
  const one = massOf(food, 1, target.id, qualifier);
  // A volume asked for from grams leans on the target's portion; the other way round on the source's.
  const shown = via.portion ? via : one;
  return { amount: via.massG / one.massG, unit: target, massG: via.massG, via: shown };
}
