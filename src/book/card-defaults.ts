import type { RecipeKind, StorageClass } from '../nutrition/recipe.ts';

/** What a card that leaves a field out gets. All are common practice, no source, unless said otherwise. */
export interface KindDefaults {
  readonly set?: { readonly leastMin: number; readonly betterMin: number };
  readonly storage: StorageClass;
  readonly shelfLifeDays: number;
  readonly moistureLoss: number;
}

/** Cautious where a card is silent: cold, and the 4 days of home leftovers rather than the 7 a label may carry. */
const COLD: KindDefaults = { storage: 'refrigerated', shelfLifeDays: 4, moistureLoss: 0 };
const BAKED: KindDefaults = { ...COLD, moistureLoss: 0.1 };

export const KIND_DEFAULTS: Readonly<Record<RecipeKind, KindDefaults>> = {
  no_bake_bar: { ...COLD, set: { leastMin: 60, betterMin: 120 } },
  baked_bar: BAKED,
  bites: { ...COLD, set: { leastMin: 30, betterMin: 60 } },
  overnight_oats: { ...COLD, set: { leastMin: 240, betterMin: 480 } },
  parfait: { ...COLD, shelfLifeDays: 3 },
  trail_mix: { ...COLD, shelfLifeDays: 7 },
  smoothie: { ...COLD, shelfLifeDays: 2 },
  roll: { ...COLD, shelfLifeDays: 3 },
  breakfast: COLD,
  muffin: BAKED,
  other: COLD,
};

const KIND_SIGNS: readonly (readonly [RegExp, RecipeKind])[] = [
  [/\bmuffins?\b/, 'muffin'],
  [/\b(?:bites?|balls?)\b/, 'bites'],
  [/\bovernight\b/, 'overnight_oats'],
  [/\bparfaits?\b/, 'parfait'],
  [/\b(?:smoothies?|shakes?)\b/, 'smoothie'],
  [/\b(?:trail|snack) mix\b/, 'trail_mix'],
  [/\b(?:rolls?|wraps?|pinwheels?)\b/, 'roll'],
];

/** The kind a card that names none is taken for, by its title and unit; a bar is baked when its method has an oven. */
export function guessKind(title: string, pieceUnit: string, method: string): RecipeKind {
  const words = `${title} ${pieceUnit}`.toLowerCase();
  const sign = KIND_SIGNS.find(([pattern]) => pattern.test(words));
  if (sign) return sign[1];
  if (!/\bbars?\b/.test(words)) return 'other';
  return /\b(?:bake[ds]?|baking|oven)\b/.test(`${words} ${method.toLowerCase()}`.replace(/no[ -]bake/g, ''))
    ? 'baked_bar'
    : 'no_bake_bar';
}
