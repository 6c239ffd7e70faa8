/** Parts a kitchen has a measure for, in twenty-fourths. */
const PARTS: ReadonlyMap<number, string> = new Map([
  [3, '1/8'],
  [6, '1/4'],
  [8, '1/3'],
  [9, '3/8'],
  [12, '1/2'],
  [15, '5/8'],
  [16, '2/3'],
  [18, '3/4'],
  [21, '7/8'],
]);

/**
 * An amount as a cook writes it: whole and fraction. An amount that is no such fraction is shown with two decimals.
 * @example amountText(1.5) // '1 1/2'
 */
export function amountText(amount: number): string {
  const twentyFourths = Math.round(amount * 24);
  if (Math.abs(twentyFourths - amount * 24) > 0.01) return decimalText(amount);
  const whole = Math.floor(twentyFourths / 24);
  const rest = twentyFourths % 24;
  if (rest === 0) return grouped(whole);
  const part = PARTS.get(rest);
  if (!part) return decimalText(amount);
  return whole === 0 ? part : `${grouped(whole)} ${part}`;
}

/** "a bit over 2": the nearest eighth or third, for a hint beside exact grams. */
export const nearAmountText = (amount: number): string => {
  const nearest = [...PARTS.keys(), 0, 24].reduce((best, part) =>
    Math.abs(part / 24 - (amount % 1)) < Math.abs(best / 24 - (amount % 1)) ? part : best,
  );
  return amountText(Math.floor(amount) + nearest / 24);
};

const decimalText = (amount: number): string =>
  amount >= 100 ? grouped(Math.round(amount)) : String(Number(amount.toPrecision(amount >= 10 ? 3 : 2)));

/** Thousands grouped, without the cost of a locale formatter. */
export function grouped(whole: number): string {
  return whole < 1000 ? String(whole) : String(whole).replace(/\B(?=(\d{3})+$)/g, ',');
}

/** Grams as read off a scale; decimals only as far as `tolerance` (relative) needs them. */
export function readableGrams(
  massG: number,
  tolerance: number,
): { readonly text: string; readonly massG: number } {
  const allowed = Math.min(tolerance, 0.01) * massG;
  for (let scale = 1; scale < 1e6; scale *= 10) {
    const rounded = Math.round(massG * scale) / scale;
    if (Math.abs(rounded - massG) > allowed || rounded === 0) continue;
    return { text: `${scale === 1 ? grouped(rounded) : rounded} g`, massG: rounded };
  }
  return { text: `${massG.toPrecision(3)} g`, massG: Number(massG.toPrecision(3)) };
}
