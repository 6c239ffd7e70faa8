import type { Mix } from './mix.ts';
import type { Limit } from './question.ts';
import { reached } from './reached.ts';

/** What keeps a dough together, as limits: the recipe's own range, widened to where the recipe itself stands. */
export function textureLimits(mix: Mix): Limit[] {
  const { wetDry } = mix.recipe;
  const measure = { kind: 'wet_dry' } as const;
  const base = mix.lines.map(({ baseG }) => baseG);
  const stands = reached(mix, base, measure);
  if (!wetDry || stands === undefined) return [];
  // The recipe as it stands may be rounded to measures too: a hair on either side is the same dough.
  const least = stands < wetDry.least ? stands * 0.98 : wetDry.least;
  const most = stands > wetDry.most ? stands * 1.02 : wetDry.most;
  return [
    { measure, bound: 'least', amount: least, from: 'texture' },
    { measure, bound: 'most', amount: most, from: 'texture' },
  ];
}
