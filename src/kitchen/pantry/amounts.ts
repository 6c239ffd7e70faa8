import { Problem } from '../../nutrition/problem.ts';

/** Ten tonnes of one food in one go is a typing error, not a delivery. */
const MOST_G = 10_000_000;
/** A hundred thousand dollars for one line likewise. */
const MOST_CENTS = 10_000_000;

/** An amount of food that a kitchen may log. Throws `bad_quantity`. */
export function checkMassG(massG: number, isZeroFine = false): number {
  if (massG <= MOST_G && (massG >= 0.001 || (isZeroFine && massG === 0))) return massG;
  throw new Problem(
    'bad_quantity',
    massG > MOST_G ? 'That is more than any kitchen holds.' : 'That is no amount of food.',
    'Write an amount above 0, like "received 4 jars peanut butter" or "counted 12 lb oats".',
  );
}

/** Money as whole cents, from nothing to what a kitchen spends at once. Throws `bad_quantity`. */
export function checkCents(cents: number): number {
  if (Number.isInteger(cents) && cents >= 0 && cents <= MOST_CENTS) return cents;
  throw new Problem(
    'bad_quantity',
    cents < 0
      ? 'A price is not below 0.'
      : cents > MOST_CENTS
        ? 'That is more than any package costs.'
        : 'That is no price.',
    'Write dollars and cents, like "oats 3.49 for 42 oz".',
  );
}
