import type { OpenedLine, Waste, WasteLine } from '../../kitchen/pantry/waste.ts';
import { sayDate } from '../../kitchen/time/zone.ts';
import type { Section } from '../answer.ts';
import { dollars } from '../money.ts';
import { pantryWords } from './amount.ts';

/** "Raisins, 16 oz (454 g): $3.00 (expired)". */
export function wasteLine({ what, pieces, massG, reason, cents, unpriced }: WasteLine): string {
  const amount = pieces === undefined ? pantryWords(massG ?? 0) : `${pieces} pieces`;
  const value =
    cents === 0 && unpriced.length > 0
      ? 'no price'
      : unpriced.length > 0
        ? `at least ${dollars(cents)}`
        : dollars(cents);
  return `${what}, ${amount}: ${value}${reason === undefined ? '' : ` (${reason})`}`;
}

/** An opened package: at most what is left of it, its last day, and what that is worth. */
export const openedLine = (line: OpenedLine): string =>
  `${wasteLine(line)} at most, last day ${sayDate(line.useBy)}`;

/** Opened packages that are past their date, and those that are waste unless they are used now. */
export const openedSections = ({ pastDate, endsSoon }: Pick<Waste, 'pastDate' | 'endsSoon'>): Section[] => [
  ...listOf('Opened and past its date, still on the shelf: throw it out and log it', pastDate),
  ...listOf('Opened, waste after its last day: use it first', endsSoon),
];

const listOf = (heading: string, lines: readonly OpenedLine[]): Section[] =>
  lines.length > 0 ? [{ kind: 'list', heading, items: lines.map(openedLine) }] : [];
