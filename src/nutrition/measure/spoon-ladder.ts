import { amountText } from './amount-text.ts';

/** Every amount below a quart that cups and spoons can make, by its eighths of a teaspoon. */
export interface SpoonLadder {
  /** How much handling an amount takes; Infinity where it cannot be made. */
  readonly effort: Float64Array;
  readonly text: readonly string[];
}

/** Eighths of a teaspoon in a quart. */
export const QUART_EIGHTHS = 192 * 8;

interface Part {
  readonly eighths: number;
  readonly effort: number;
  readonly text: string;
}

let ladder: SpoonLadder | undefined;

/** The ladder, built on first use: cups (1/4 1/3 1/2 2/3 3/4), Tbsp, tsp (1/8 1/4 1/2 3/4). */
export function spoonLadder(): SpoonLadder {
  ladder ??= buildLadder();
  return ladder;
}

/** Fractions of a cup a kitchen owns a measure for, in twelfths, and how handy each is. */
export const CUP_PARTS: readonly (readonly [twelfths: number, effort: number])[] = [
  [0, 0],
  [3, 0.6],
  [4, 0.65],
  [6, 0.5],
  [8, 0.7],
  [9, 0.7],
];

function buildLadder(): SpoonLadder {
  const effort = new Float64Array(QUART_EIGHTHS + 1).fill(Number.POSITIVE_INFINITY);
  const text: string[] = new Array<string>(QUART_EIGHTHS + 1).fill('');
  for (const cup of cupParts()) {
    for (const spoon of tablespoonParts()) {
      for (const tea of teaspoonParts(cup.eighths + spoon.eighths === 0)) {
        const eighths = cup.eighths + spoon.eighths + tea.eighths;
        const total = cup.effort + spoon.effort + tea.effort;
        if (eighths === 0 || eighths > QUART_EIGHTHS || total >= (effort[eighths] ?? 0)) continue;
        effort[eighths] = total;
        text[eighths] = [cup, spoon, tea]
          .filter((part) => part.eighths > 0)
          .map((part) => part.text)
          .join(' + ');
      }
    }
  }
  return { effort, text };
}

function cupParts(): Part[] {
  const parts: Part[] = [];
  for (let whole = 0; whole < 4; whole++) {
    for (const [twelfths, effort] of CUP_PARTS) {
      const cups = whole + twelfths / 12;
      parts.push({
        eighths: Math.round(cups * 384),
        effort: whole * 0.15 + effort + (cups > 0 ? 0.5 : 0),
        text: `${amountText(cups)} ${cups > 1 ? 'cups' : 'cup'}`,
      });
    }
  }
  return parts;
}

const tablespoonParts = (): Part[] =>
  [0, 1, 2, 3].map((spoons) => ({
    eighths: spoons * 24,
    effort: spoons === 0 ? 0 : 0.8 + spoons * 0.15,
    text: `${spoons} Tbsp`,
  }));

/** Spoons come in 1/8, 1/4, 1/2 and 3/4 tsp: an odd eighth takes a second one. */
function teaspoonText(eighths: number): string {
  if (eighths % 2 === 0 || eighths === 1) return `${amountText(eighths / 8)} tsp`;
  return `${amountText((eighths - 1) / 8)} tsp + 1/8 tsp`;
}

/** Eighths of a teaspoon only stand alone: beside cups they are lost in the levelling. */
function teaspoonParts(alone: boolean): Part[] {
  const step = alone ? 1 : 2;
  const parts: Part[] = [];
  for (let eighths = 0; eighths < 24; eighths += step) {
    const fraction = eighths % 8 === 0 ? 0 : eighths % 2 === 0 ? 0.35 : 0.8;
    parts.push({
      eighths,
      effort: eighths === 0 ? 0 : 0.9 + Math.floor(eighths / 8) * 0.15 + fraction,
      text: teaspoonText(eighths),
    });
  }
  return parts;
}
