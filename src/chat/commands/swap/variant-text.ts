import type { Food } from '../../../nutrition/food.ts';
import type { SwapOffer } from '../../../nutrition/swap/offer.ts';

/** All that a swap changes: "sunflower butter for peanut butter, pea protein for vanilla whey". */
export const offerText = ({ swaps }: SwapOffer): string =>
  swaps.map(({ from, to }) => (to ? standsFor(to, from) : `no ${shortName(from)}`)).join(', ');

/** Full names where the short ones are alike: "peanut butter, crunchy for peanut butter, smooth". */
export function standsFor(used: Food, was: Food): string {
  const isAlike = shortName(used) === shortName(was);
  return isAlike
    ? `${used.name.toLowerCase()} for ${was.name.toLowerCase()}`
    : `${shortName(used)} for ${shortName(was)}`;
}

/**
 * A food's name without its small print.
 * @example shortName({ name: 'Sunflower butter, nut-free facility' }) // 'sunflower butter'
 */
function shortName({ name }: Pick<Food, 'name'>): string {
  const [head = name, ...rest] = name.split(', ');
  const short = head.includes(' ') ? head : [...rest, head].join(' ');
  return short.charAt(0).toLowerCase() + short.slice(1);
}
