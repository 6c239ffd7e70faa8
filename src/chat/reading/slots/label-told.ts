import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';

/** From here on it is what the label says. */
const SAYS = /^(?:contains?|containing|says?|lists?|traces?|with|now)$/;
const PRODUCT = /^[FYV]$/;

/**
 * The product whose label is told of, in "peanut butter has a new label, contains soy": the first food named before what
 * the label says, else the first one. An allergen by its own name is a product here.
 */
export function labeledProduct({ seen }: Lexed): Atom | undefined {
  const says = seen.findIndex(({ sym }) => SAYS.test(sym));
  const isProduct = ({ sym }: Atom): boolean => PRODUCT.test(sym);
  return seen.slice(0, says < 0 ? seen.length : says).find(isProduct) ?? seen.find(isProduct);
}
