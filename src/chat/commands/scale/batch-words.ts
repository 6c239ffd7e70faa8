import { grouped } from '../../../nutrition/measure/amount-text.ts';
import { OUNCE_G } from '../../../nutrition/measure/published-rounding.ts';

/** "40 bars", "1 bar". */
export const piecesText = (count: number, unit: string): string =>
  `${grouped(count)} ${pluralOf(unit, count)}`;

/** "40 Oat bars", or "40 cups of Berry smoothie" when the title does not name the piece. */
export const batchText = (count: number, unit: string, title: string): string =>
  count > 1 && title.toLowerCase().includes(pluralOf(unit, 2))
    ? `${grouped(count)} ${title}`
    : `${piecesText(count, unit)} of ${title}`;

export const pluralOf = (unit: string, count: number): string =>
  count === 1 || unit.endsWith('s')
    ? unit
    : unit.endsWith('ch') || unit.endsWith('x')
      ? `${unit}es`
      : `${unit}s`;

/** Grams for people: one decimal under ten, two under one; never a bare 0 for something that is there. */
export function gramsText(massG: number): string {
  if (massG >= 10) return grouped(Math.round(massG));
  return massG >= 1 ? massG.toFixed(1) : String(Number(massG.toPrecision(2)));
}

/** "1.4 kg (3 lb 1 oz)" from a kilogram up, "420 g" below. */
export function weightText(massG: number): string {
  if (massG < 1000) return `${gramsText(massG)} g`;
  const ounces = Math.round(massG / OUNCE_G);
  const pounds = `${grouped(Math.floor(ounces / 16))} lb${ounces % 16 > 0 ? ` ${ounces % 16} oz` : ''}`;
  return `${kilograms(massG)} kg (${pounds})`;
}

const kilograms = (massG: number): string =>
  massG < 100_000 ? String(Math.round(massG / 10) / 100) : grouped(Math.round(massG / 1000));

/** Inches to the eighth, as a ruler has them. */
export function inchesText(inches: number): string {
  const eighths = Math.max(1, Math.round(inches * 8));
  const whole = Math.floor(eighths / 8);
  const part = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'][eighths % 8] ?? '';
  return [whole > 0 ? String(whole) : '', part].filter(Boolean).join(' ');
}

/** "2 h", "90 min". */
export const minutesText = (min: number): string =>
  min >= 60 && min % 60 === 0 ? `${min / 60} h` : `${min} min`;

/** A share with its sign: "+1.2 %". */
export const signedPercent = (share: number): string => {
  const percent = (share * 100).toFixed(1);
  if (Number(percent) === 0) return '0.0 %';
  return `${share > 0 ? '+' : ''}${percent.replace('-', '\u2212')} %`;
};

/** "2 1/2" style for a batch factor, "2.375" else. */
export const factorText = (factor: number): string => String(Number(factor.toPrecision(4)));
