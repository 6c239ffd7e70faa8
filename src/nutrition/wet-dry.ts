import type { Food, Role } from './food.ts';

/** One food in a mix, and the work it does there. */
export interface MixPart {
  readonly food: Food;
  readonly role: Role;
  readonly massG: number;
}

/**
 * Whether a part counts as wet when a dough is judged: liquids, binders and fats do; a sweetener, a protein or a
 * flavor by its water (honey and yogurt yes, sugar and powder no); fruit and crunch only when fresh.
 * Common practice, no source.
 */
export function isWet(food: Food, role: Role): boolean {
  const water = food.per100g.waterG ?? 0;
  switch (role) {
    case 'liquid':
    case 'binder':
    case 'fat':
      return true;
    case 'sweetener':
    case 'protein':
    case 'flavor':
      return water >= 15;
    case 'color':
    case 'crunch':
      return water >= 60;
    case 'dry_base':
    case 'leavening':
      return false;
    default:
      return role satisfies never;
  }
}

/**
 * Grams of wet over grams of dry; `undefined` when nothing in the mix is dry.
 * @example wetOverDry([{ food: honey, role: 'sweetener', massG: 50 }, { food: oats, role: 'dry_base', massG: 100 }]) // 0.5
 */
export function wetOverDry(parts: readonly MixPart[]): number | undefined {
  let wetG = 0;
  let dryG = 0;
  for (const part of parts) {
    if (isWet(part.food, part.role)) wetG += part.massG;
    else dryG += part.massG;
  }
  return dryG > 0 ? wetG / dryG : undefined;
}
