/**
 * Clocks of the FDA Food Code model and of FDA's advice, as elapsed minutes. Nothing here says that food is fit to
 * serve: only when a limit is passed.
 */

/** 3-501.14(A): 135 to 70 °F within 2 hours, and to 41 °F within 6 hours in all. */
export const COOLING = { fromF: 135, firstF: 70, firstMin: 120, lastF: 41, lastMin: 360 } as const;
/** 3-501.14(B): made from ingredients at room temperature, to 41 °F within 4 hours. */
export const COOLING_FROM_ROOM_MIN = 240;

export type CoolingVerdict =
  | { readonly state: 'on_track'; readonly untilMin: number; readonly toF: number }
  | { readonly state: 'reached' }
  | { readonly state: 'failed'; readonly stage: 'first' | 'second' };

/**
 * How cooling stands `elapsedMin` after the food was at 135 °F. What is saved in the first stage counts for the second.
 * @example judgeCooling(78, 120) // { state: 'failed', stage: 'first' }
 */
export function judgeCooling(tempF: number, elapsedMin: number): CoolingVerdict {
  if (tempF > COOLING.firstF) {
    return elapsedMin >= COOLING.firstMin
      ? { state: 'failed', stage: 'first' }
      : { state: 'on_track', untilMin: COOLING.firstMin, toF: COOLING.firstF };
  }
  if (tempF > COOLING.lastF) {
    return elapsedMin >= COOLING.lastMin
      ? { state: 'failed', stage: 'second' }
      : { state: 'on_track', untilMin: COOLING.lastMin, toF: COOLING.lastF };
  }
  return elapsedMin > COOLING.lastMin ? { state: 'failed', stage: 'second' } : { state: 'reached' };
}

/** FDA and FoodSafety.gov: an unopened refrigerator keeps cold about 4 h, a full freezer 48 h, a half-full one 24 h. */
export const POWER = {
  fridgeMin: 240,
  freezerFullMin: 48 * 60,
  freezerHalfMin: 24 * 60,
  warmMin: 120,
} as const;

export type PowerVerdict = 'within' | 'check_each' | 'discard';

/**
 * A refrigerator after a power failure. Past 4 hours, or warm at all, every food is measured; what was above the limit
 * for 2 hours or more goes. FDA's advice to consumers says 40 °F; the food code's limit for kitchens is 41 °F.
 */
export function judgePower(minutes: number, tempF: number | undefined, limitF: number): PowerVerdict {
  const isWarm = tempF !== undefined && tempF > limitF;
  if (minutes > POWER.fridgeMin) return isWarm ? 'discard' : 'check_each';
  return isWarm ? 'check_each' : 'within';
}
