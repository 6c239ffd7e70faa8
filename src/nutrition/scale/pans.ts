import { Problem } from '../problem.ts';
import type { Pan } from '../recipe.ts';

interface NominalPan extends Pan {
  readonly spellings: readonly string[];
}

/**
 * Pans of the trade by nominal size in inches: sheet pans (U-36, trade convention; a half sheet of 18 x 13 x 1 in is
 * in USDA recipes) and steam-table pans (U-39). Real insides are smaller; nominal areas keep their exact ratios, and
 * bars of equal thickness scale by area.
 */
export const NOMINAL_PANS: readonly NominalPan[] = [
  {
    id: 'full-sheet',
    name: 'full sheet pan',
    lengthIn: 26,
    widthIn: 18,
    depthIn: 1,
    spellings: ['full sheet', 'full sheet pan', 'sheet pan', 'whole sheet', '18x26'],
  },
  {
    id: 'half-sheet',
    name: 'half sheet pan',
    lengthIn: 18,
    widthIn: 13,
    depthIn: 1,
    spellings: ['half sheet', 'half sheet pan', '13x18'],
  },
  {
    id: 'quarter-sheet',
    name: 'quarter sheet pan',
    lengthIn: 13,
    widthIn: 9,
    depthIn: 1,
    spellings: ['quarter sheet', 'quarter sheet pan', '1/4 sheet'],
  },
  {
    id: 'full-hotel',
    name: 'full steam-table pan',
    lengthIn: 20,
    widthIn: 12,
    depthIn: 2.5,
    spellings: ['full hotel pan', 'hotel pan', 'steam table pan', 'full hotel', '12x20'],
  },
  {
    id: 'half-hotel',
    name: 'half steam-table pan',
    lengthIn: 12,
    widthIn: 10,
    depthIn: 2.5,
    spellings: ['half hotel pan', 'half hotel', '10x12'],
  },
];

const areas = new WeakMap<Pan, number>();

/** Square inches of the bottom; a pan known to the trade counts by its nominal size so that halves are halves. */
export function panArea(pan: Pan): number {
  const known = areas.get(pan);
  if (known !== undefined) return known;
  const area = workOutArea(pan);
  areas.set(pan, area);
  return area;
}

function workOutArea(pan: Pan): number {
  const nominal = nominalOf(pan.id) ?? nominalOf(pan.name);
  const near =
    nominal && Math.abs((nominal.lengthIn * nominal.widthIn) / (pan.lengthIn * pan.widthIn) - 1) < 0.15;
  const counted = near ? nominal : pan;
  return counted.lengthIn * counted.widthIn;
}

/**
 * The pan people mean: one of the kitchen's, one of the trade's, or its inches ("9x13").
 * @throws Problem `unknown_unit` that lists the kitchen's pans.
 * @example findPan('9x13', []).widthIn // 9
 */
export function findPan(written: string, kitchenPans: readonly Pan[]): Pan {
  const key = plain(written.slice(0, 60));
  const own = kitchenPans.find((pan) => plain(pan.id) === key || plain(pan.name) === key);
  const found =
    own ??
    nominalOf(key) ??
    kitchenPans.find((pan) => key !== '' && plain(pan.name).includes(key)) ??
    byInches(key);
  if (found) return found;
  const known = kitchenPans.map((pan) => pan.name).join(', ');
  throw new Problem(
    'unknown_unit',
    `I do not know the pan "${written.slice(0, 40)}".`,
    `Write its inches, for example 9x13${known ? `, or: ${known}` : ''}.`,
  );
}

const nominalOf = (written: string): NominalPan | undefined => {
  const key = plain(written);
  return NOMINAL_PANS.find(
    (pan) => plain(pan.id) === key || plain(pan.name) === key || pan.spellings.includes(key),
  );
};

function byInches(key: string): Pan | undefined {
  const parts =
    /^(\d{1,2}(?:\.\d+)?)\s*x\s*(\d{1,2}(?:\.\d+)?)(?:\s*x\s*\d(?:\.\d+)?)?(?: pan| tray| dish)?$/.exec(key);
  const sides = [Number(parts?.[1]), Number(parts?.[2])].sort((a, b) => a - b);
  const [widthIn = 0, lengthIn = 0] = sides;
  if (!parts || widthIn < 2 || lengthIn > 40) return undefined;
  return {
    id: `${widthIn}x${lengthIn}`,
    name: `${widthIn} x ${lengthIn} in pan`,
    lengthIn,
    widthIn,
    depthIn: 2,
  };
}

const plain = (written: string): string =>
  written
    .toLowerCase()
    .replace(/[×*]|\bby\b/g, 'x')
    .replace(/["”]|\b(?:in|inch|inches|a|an|the|baking)\b/g, ' ')
    .replace(/(\d)\s*x\s*(?=\d)/g, '$1x')
    .replace(/[-_\s]+/g, ' ')
    .trim();
