import { Problem } from '../nutrition/problem.ts';
import type { Pan, RecipeKind, StorageClass } from '../nutrition/recipe.ts';
import { type MethodStep, RECIPE_KINDS } from '../nutrition/recipe.ts';
import type { Card } from './card-schema.ts';
import { amountOf, minutes, pairOf, wholeNumber } from './card-values.ts';

const MOST_PIECES = 5000;

const wrong = (message: string, hint = ''): Problem => new Problem('bad_file', message, hint);

/** `12 bars`, `Makes 12 bars`, 12 or {pieces, unit}. @throws Problem */
export function readYield(written: Card['yield']): { readonly pieces: number; readonly unit: string } {
  const { pieces, unit } = typeof written === 'object' ? written : splitYield(String(written));
  const count = wholeNumber(pieces, 'The yield');
  if (count > MOST_PIECES) throw wrong(`A yield of ${count} is more than one recipe makes.`);
  return { pieces: count, unit: singular(unit?.trim().toLowerCase() || 'serving') };
}

function splitYield(written: string): { readonly pieces: string; readonly unit?: string } {
  const plain = written
    .replace(/^\s*(?:(?:makes|yields?|serves|about)\b:?\s*)+/i, '')
    // "24 - 4 inch pancakes", "25 (1 oz) servings": how large one is stands between.
    .replace(/^(\d+)\s*(?:[-–]\s*[\d./]+[\s-]*(?:inch(?:es)?|in|oz|ounces?|g)\b\.?|\([^)]*\))/i, '$1')
    .trim();
  const parts = /^((?:a\s+)?(?:-?[\d./]+(?:\s*(?:-|to)\s*[\d./]+)?|\p{L}+))(?:\s+(.*?))?[\s.]*$/u.exec(plain);
  const [pieces, words] = [parts?.[1] ?? plain, parts?.[2]];
  if (words?.toLowerCase().startsWith('dozen')) {
    const unit = words.slice('dozen'.length).trim();
    return { pieces: `${pieces} dozen`, ...(unit ? { unit } : {}) };
  }
  // The last word names the piece: "12 large bars" is bars.
  const unit = words
    ?.replace(/\s*[(,].*$/, '')
    .split(' ')
    .at(-1);
  return { pieces, ...(unit ? { unit } : {}) };
}

const singular = (word: string): string =>
  /(?:ss|us)$/.test(word)
    ? word
    : word
        .replace(/(?<=sandwich|dish|box)es$/, '')
        .replace(/ies$/, 'ie')
        .replace(/(?<=\w)s$/, '');

/** @throws Problem that lists the kinds. */
export function readKind(written: string): RecipeKind {
  const plain = written
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  const kind = RECIPE_KINDS.find((known) => known === plain || `${known}s` === plain);
  if (!kind)
    throw wrong(`"${written}" is no kind of recipe known here.`, `Write one of ${RECIPE_KINDS.join(', ')}.`);
  return kind;
}

const STORAGE_WORDS: Readonly<Record<string, StorageClass>> = {
  refrigerated: 'refrigerated',
  refrigerator: 'refrigerated',
  fridge: 'refrigerated',
  cold: 'refrigerated',
  chilled: 'refrigerated',
  frozen: 'frozen',
  freezer: 'frozen',
  room: 'room',
  'room temperature': 'room',
  shelf: 'room',
  dry: 'room',
  pantry: 'room',
};

/** @throws Problem */
export function readStorage(written: string): StorageClass {
  const plain = written.trim().toLowerCase();
  const storage = Object.hasOwn(STORAGE_WORDS, plain) ? STORAGE_WORDS[plain] : undefined;
  if (!storage) throw wrong(`"${written}" is no way of keeping food.`);
  return storage;
}

/** A pan of the kitchen by id or name ("9 x 13", "half sheet"), or measures of its own. @throws Problem */
export function readPan(written: NonNullable<Card['pan']>, pans: readonly Pan[]): Pan {
  if (typeof written === 'object') return ownPan(written);
  const key = panKey(written);
  const pan = pans.find(({ id, name }) => [panKey(id), panKey(name)].includes(key));
  if (pan) return pan;
  const sides = /^([\d.]+)x([\d.]+)(?:x([\d.]+))?$/.exec(key);
  const [first, second] = [Number(sides?.[1]), Number(sides?.[2])];
  const turned = pans.find((one) => one.lengthIn === first && one.widthIn === second);
  if (turned) return turned;
  if (sides && first > 0 && second > 0 && first <= 60 && second <= 60) {
    return ownPan({
      length: Math.max(first, second),
      width: Math.min(first, second),
      depth: Number(sides[3] ?? 2),
    });
  }
  const known = pans.map(({ id }) => id).join(', ');
  throw wrong(
    `There is no pan called "${written}".`,
    known && `Write one of ${known}, or {length: 13, width: 9, depth: 2}.`,
  );
}

const panKey = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[×*]|\bby\b/g, 'x')
    .replace(/(?:\b|(?<=\d))(?:in|inch|inches|pan|baking|dish|tray)\b\.?|["”_]/g, ' ')
    .replace(/(?<=[\dx])\s+(?=[\dx])|-(?=x|\d)/g, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^([\d.]+)[ -]*square$/, '$1x$1');

function ownPan(written: Record<string, unknown>): Pan {
  const side = (key: string, fallback?: number): number => {
    const value = written[key] ?? fallback;
    const inches = typeof value === 'number' || typeof value === 'string' ? amountOf(value) : Number.NaN;
    if (!(inches > 0 && inches <= 60)) throw wrong(`The ${key} of the pan should be inches, more than 0.`);
    return inches;
  };
  const [lengthIn, widthIn, depthIn] = [side('length'), side('width'), side('depth', 2)];
  const name = typeof written.name === 'string' ? written.name : `${widthIn} x ${lengthIn} in pan`;
  return { id: `${widthIn}x${lengthIn}`, name, lengthIn, widthIn, depthIn };
}

/** Rows by columns, which must give the yield when that is known. @throws Problem */
export function readCut(
  written: NonNullable<Card['cut']>,
  pieces: number | undefined,
): { readonly rows: number; readonly columns: number } {
  const [rows, columns] =
    typeof written === 'string' ? (pairOf(written) ?? [written, undefined]) : [written.rows, written.columns];
  if (columns === undefined) throw wrong(`"${written}" does not say rows by columns.`);
  const cut = { rows: wholeNumber(rows, 'Rows'), columns: wholeNumber(columns, 'Columns') };
  if (pieces !== undefined && cut.rows * cut.columns !== pieces) {
    throw wrong(
      `Cut ${cut.rows} x ${cut.columns} gives ${cut.rows * cut.columns} pieces, but the yield is ${pieces}.`,
      'Change the cut or the yield so that both say the same.',
    );
  }
  return cut;
}

/** Set time; one number is both least and better. @throws Problem */
export function readSet(written: NonNullable<Card['set']>): {
  readonly leastMin: number;
  readonly betterMin: number;
} {
  const spread = typeof written === 'string' ? pairOf(written) : undefined;
  const [least, better] =
    typeof written === 'object' ? [written.least, written.better] : (spread ?? [written, undefined]);
  const leastMin = minutes(least);
  const betterMin = better === undefined ? leastMin : minutes(better);
  if (betterMin < leastMin) throw wrong('The better set time is shorter than the least.');
  return { leastMin, betterMin };
}

/** Wet over dry by weight. @throws Problem */
export function readWetDry(written: NonNullable<Card['wet_dry']>): {
  readonly least: number;
  readonly most: number;
} {
  const ends = typeof written === 'string' ? pairOf(written) : ([written.least, written.most] as const);
  if (!ends) throw wrong(`"${written}" is not a range.`);
  const [least, most] = [amountOf(ends[0]), amountOf(ends[1])];
  if (!(least > 0 && least <= most))
    throw wrong('The range of wet over dry runs from more to less, or from 0.');
  return { least, most };
}

/** Steps from a list, or from a text with one step a line. */
export function readMethod(written: Card['method']): MethodStep[] {
  const steps = typeof written === 'string' ? written.split(/\n+/) : (written ?? []);
  return steps.flatMap((step) => {
    const fields = typeof step === 'string' ? { text: step } : step;
    const text = fields.text.trim().replace(/^\d+[.)]\s+/, '');
    const watch = fields.control?.watch ?? fields.watch;
    const limit = fields.control?.limit ?? fields.limit;
    if (text === '') return [];
    return [watch && limit ? { text, control: { watch, limit } } : { text }];
  });
}
