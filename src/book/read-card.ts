import type { KitchenSettings } from '../nutrition/book.ts';
import type { FoodFinder } from '../nutrition/ingredient-list/food-finder.ts';
import { Problem } from '../nutrition/problem.ts';
import type { Recipe, RecipeLine } from '../nutrition/recipe.ts';
import { guessKind, KIND_DEFAULTS } from './card-defaults.ts';
import {
  readCut,
  readKind,
  readMethod,
  readPan,
  readSet,
  readStorage,
  readWetDry,
  readYield,
} from './card-fields.ts';
import {
  CARD_FIELDS,
  CARD_HINTS,
  type Card,
  cardField,
  cardSchema,
  INGREDIENT_FIELDS,
  ingredientSchema,
} from './card-schema.ts';
import { amountOf, listOf, share, wholeNumber } from './card-values.ts';
import { type IngredientEntry, ingredientEntries } from './ingredient-entries.ts';
import { ingredientFields } from './ingredient-fields.ts';
import type { Complaint, FieldPath } from './place.ts';
import { lineFromFields, lineFromText } from './recipe-line.ts';

export interface CardReading {
  /** Absent when anything the recipe needs is wrong: a half-read recipe is never cooked from. */
  readonly recipe?: Recipe;
  /** With a recipe, these are only fields nobody knows. */
  readonly complaints: readonly Complaint[];
}

/** What a card is read against. */
export interface CardContext {
  readonly finder: FoodFinder;
  readonly settings: KitchenSettings;
  /** Id of a card whose title cannot be made into one: its file's name. */
  readonly fallbackId: string;
}

/**
 * Makes a recipe of one card, or says everything that is wrong with it at once.
 * Fields left out get the defaults of its kind (`card-defaults.ts`).
 */
export function readCard(value: unknown, context: CardContext): CardReading {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse('This file does not hold a recipe.', 'Write fields: title, yield and ingredients.');
  }
  const { fields, writtenKeys, unknown } = renameFields(value as Record<string, unknown>);
  const asWritten = ({ path, ...rest }: Complaint): Complaint => ({
    ...rest,
    path: path.map((part, place) => (place === 0 ? (writtenKeys.get(String(part)) ?? part) : part)),
  });
  const shape = cardSchema.safeParse(fields);
  if (!shape.success) {
    const complaints = shape.error.issues.map(({ path, message }) => ({
      path: path as FieldPath,
      message,
      hint: CARD_HINTS[String(path[0])] ?? 'Write title, yield and ingredients.',
    }));
    return { complaints: [...complaints.map(asWritten), ...unknown] };
  }
  const { recipe, complaints } = toRecipe(shape.data, context);
  const all = [...complaints.map(asWritten), ...unknown];
  return recipe && complaints.length === 0 ? { recipe, complaints: all } : { complaints: all };
}

const refuse = (message: string, hint: string): CardReading => ({
  complaints: [{ path: [], message, hint }],
});

function renameFields(value: Record<string, unknown>) {
  const fields: Record<string, unknown> = {};
  const writtenKeys = new Map<string, string>();
  const unknown: Complaint[] = [];
  for (const [key, field] of Object.entries(value)) {
    const name = cardField(key);
    if (field === null || field === undefined) continue;
    if (!CARD_FIELDS.includes(name)) {
      unknown.push({
        path: [key],
        message: `"${key}" is not a field of a recipe; it is not read.`,
        hint: `Fields are ${CARD_FIELDS.join(', ')}.`,
      });
    } else if (Object.hasOwn(fields, name)) {
      unknown.push({
        path: [key],
        message: `"${key}" says "${name}" a second time; it is not read.`,
        hint: 'Keep one.',
      });
    } else {
      fields[name] = field;
      writtenKeys.set(name, key);
    }
  }
  return { fields, writtenKeys, unknown };
}

/** Runs each reader, turning what it throws into a complaint about its field. */
class Reading {
  readonly complaints: Complaint[] = [];

  field<T>(path: FieldPath, read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      const own = CARD_HINTS[String(path[0])] ?? 'See the README for an example.';
      // "Write a number" helps less than an example of the field that number stands in.
      const hint =
        error.hint === '' || (error.code === 'bad_quantity' && path.length === 1) ? own : error.hint;
      this.complaints.push({ path, message: error.message, hint });
      return undefined;
    }
  }

  /** As `field`, for a field that may be left out. */
  maybe<W, T>(path: FieldPath, written: W | undefined, read: (written: W) => T): T | undefined {
    return written === undefined ? undefined : this.field(path, () => read(written));
  }
}

function toRecipe(
  card: Card,
  { finder, settings, fallbackId }: CardContext,
): { recipe?: Recipe; complaints: Complaint[] } {
  const reading = new Reading();
  const id = reading.field(['id'], () => idOf(card, fallbackId));
  const made = reading.field(['yield'], () => readYield(card.yield));
  const steps = readMethod(card.method);
  const method = steps.map(({ text }) => text).join(' ');
  const kind = reading.field(['kind'], () =>
    card.kind === undefined ? guessKind(card.title, made?.unit ?? '', method) : readKind(card.kind),
  );
  const isFood = (words: string): boolean => finder.find(words) !== undefined;
  const lines = ingredientEntries(card.ingredients, isFood).map((entry) => readLine(reading, entry, finder));
  const version = reading.maybe(['version'], card.version, (date) => calendarDate(String(date)));
  const pan = reading.maybe(['pan'], card.pan, (words) => readPan(words, settings.pans));
  const cut = reading.maybe(['cut'], card.cut, (words) => readCut(words, made?.pieces));
  const bowlG = reading.maybe(['bowl'], card.bowl, gramsOf);
  const defaults = KIND_DEFAULTS[kind ?? 'other'];
  const set = reading.maybe(['set'], card.set, readSet) ?? defaults.set;
  const storage = reading.maybe(['storage'], card.storage, readStorage) ?? defaults.storage;
  const shelfLifeDays =
    reading.maybe(['shelf_life_days'], card.shelf_life_days, (days) =>
      shelfLife(days, storage, settings.mostDays),
    ) ?? Math.min(defaults.shelfLifeDays, settings.mostDays);
  const wetDry = reading.maybe(['wet_dry'], card.wet_dry, readWetDry);
  const moistureLoss = reading.maybe(['moisture_loss'], card.moisture_loss, (part) =>
    share(part, 'The moisture loss', 0.9),
  );
  const handlingLoss = reading.maybe(['handling_loss'], card.handling_loss, (part) =>
    share(part, 'The handling loss', 0.5),
  );
  const { complaints } = reading;
  if (complaints.length > 0 || !id || !made || !kind) return { complaints };
  const recipe: Recipe = {
    id,
    title: card.title,
    aliases: listOf(card.aliases).map((alias) => alias.toLowerCase()),
    kind,
    version: version ?? '',
    yieldPieces: made.pieces,
    pieceUnit: made.unit,
    ...(card.piece === undefined ? {} : { piece: card.piece }),
    lines: lines.filter((line) => line !== undefined),
    moistureLoss: moistureLoss ?? defaults.moistureLoss,
    handlingLoss: handlingLoss ?? 0,
    steps,
    ...(bowlG === undefined ? {} : { bowlG }),
    ...(pan === undefined ? {} : { pan }),
    ...(cut === undefined ? {} : { cut }),
    ...(set === undefined ? {} : { set }),
    storage,
    shelfLifeDays,
    ...(wetDry === undefined ? {} : { wetDry }),
    tags: listOf(card.tags),
    ...(card.note === undefined ? {} : { note: card.note }),
  };
  return { recipe, complaints };
}

function readLine(
  reading: Reading,
  { written, place }: IngredientEntry,
  finder: FoodFinder,
): RecipeLine | undefined {
  const path = ['ingredients', place] as const;
  if (typeof written === 'string') return reading.field(path, () => lineFromText(written, finder));
  if (typeof written !== 'object' || written === null || Array.isArray(written)) {
    const message = 'An ingredient should be a line of text or a list of its fields.';
    reading.complaints.push({ path, message, hint: CARD_HINTS.ingredients ?? '' });
    return undefined;
  }
  const record = written as Record<string, unknown>;
  const text = asLineOfText(record);
  if (text !== undefined) return reading.field(path, () => lineFromText(text, finder));
  const fields = reading.field(path, () => ingredientFields(record));
  return fields === undefined ? undefined : readFields(reading, fields, path, finder);
}

function readFields(
  reading: Reading,
  fields: Record<string, unknown>,
  path: readonly ['ingredients', number],
  finder: FoodFinder,
): RecipeLine | undefined {
  const shape = ingredientSchema.safeParse(fields);
  if (!shape.success) {
    for (const issue of shape.error.issues) {
      reading.complaints.push({
        path: [...path, ...(issue.path as FieldPath)],
        message: issue.message,
        hint: 'Write {food: rolled oats, amount: 2, unit: cups} or "2 cups rolled oats".',
      });
    }
    return undefined;
  }
  const strange = Object.keys(shape.data).find((key) => !INGREDIENT_FIELDS.includes(key));
  if (strange !== undefined) {
    reading.complaints.push({
      path: [...path, strange],
      message: `"${strange}" is not a field of an ingredient.`,
      hint: `Fields are ${INGREDIENT_FIELDS.join(', ')}.`,
    });
    return undefined;
  }
  return reading.field(path, () => lineFromFields(shape.data, finder));
}

/** `- rolled oats: 2 cups` is how many people write a list; it means the line of text. */
function asLineOfText(line: Record<string, unknown>): string | undefined {
  const [only, ...others] = Object.entries(line);
  if (!only || others.length > 0 || INGREDIENT_FIELDS.includes(only[0])) return undefined;
  const [food, amount] = only;
  return typeof amount === 'string' || typeof amount === 'number' ? `${amount} ${food}` : undefined;
}

/** The id written, else one made of the title, else of the file when the title has no Latin letters. */
function idOf(card: Card, fallbackId: string): string {
  const id = slug(card.id ?? card.title) || (card.id === undefined ? slug(fallbackId) : '');
  if (id === '') throw new Problem('bad_file', `"${card.id ?? card.title}" cannot be made into an id.`, '');
  return id;
}

function slug(written: string): string {
  return written
    .toLowerCase()
    .normalize('NFKD')
    .replace(/['’]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
}

/** The text is checked to be a day that exists; it stays a calendar date and never becomes an instant. */
function calendarDate(written: string): string {
  const date = written.trim().slice(0, 10);
  const atNoon = new Date(`${date}T12:00:00Z`);
  if (
    !/^\d{4}-\d\d-\d\d$/.test(date) ||
    Number.isNaN(atNoon.getTime()) ||
    atNoon.toISOString().slice(0, 10) !== date
  ) {
    throw new Problem('bad_file', `"${written}" is not a date.`, '');
  }
  return date;
}

function gramsOf(written: string | number): number {
  const kilos = /^(.*?)\s*kg$/i.exec(String(written).trim());
  const grams = kilos
    ? amountOf(kilos[1] ?? '') * 1000
    : amountOf(String(written).replace(/\s*g(?:rams?)?$/i, ''));
  if (!(grams > 0)) throw new Problem('bad_quantity', 'A bowl that takes nothing cannot be used.', '');
  return grams;
}

/** Refrigerated food never gets more days than the kitchen allows, whatever its card hopes. */
function shelfLife(written: string | number, storage: Recipe['storage'], mostDays: number): number {
  const days = wholeNumber(String(written).replace(/\s*days?$/i, ''), 'The shelf life');
  if (storage === 'refrigerated' && days > mostDays) {
    throw new Problem(
      'bad_file',
      `${days} days refrigerated is more than this kitchen allows (${mostDays}, counting the day made).`,
      `Write ${mostDays} or less.`,
    );
  }
  return days;
}
