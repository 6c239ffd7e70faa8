import type { Slots } from '../../slots.ts';

const NUMBER = '(\\d*\\.?\\d+)';
const NAMED = '\\bwet\\s*(?:to|over|[:/-])\\s*dry\\s*(?:ratio\\s*)?(?:of|at|is|=|:)?\\s*';
const BETWEEN = new RegExp(`${NAMED}(?:between|from|in)?\\s*${NUMBER}\\s*(?:to|and|-|–)\\s*${NUMBER}`, 'i');
const ONE = new RegExp(`${NAMED}(under|over|above|below|least|most|min|max)?\\s*${NUMBER}`, 'i');
const AT_LEAST = /^(?:least|min|over|above)$/i;

/**
 * Grams of wet over grams of dry: "wet to dry 0.8", "wet:dry at most 0.75", "wet:dry between 0.6 and 0.8", which is
 * the lower in `wet_dry` and the upper in `wet_dry_most`.
 */
export function wetDry(text: string): Slots {
  const range = BETWEEN.exec(text);
  if (range) {
    const ends = [Number(range[1]), Number(range[2])].sort((a, b) => a - b);
    return { wet_dry: ends[0], wet_dry_most: ends[1] };
  }
  const said = ONE.exec(text);
  if (!said) return {};
  const bound = said[1] === undefined ? undefined : AT_LEAST.test(said[1]) ? 'least' : 'most';
  return { wet_dry: Number(said[2]), ...(bound ? { wet_dry_bound: bound } : {}) };
}
