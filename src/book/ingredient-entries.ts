import { ingredientLines } from '../nutrition/ingredient-list/headings.ts';
import type { IsFood } from '../nutrition/ingredient-list/read-line.ts';
import { splitLines } from '../nutrition/ingredient-list/split-lines.ts';

/** One ingredient as written, a line of text or its fields, and its place among those of the card. */
export interface IngredientEntry {
  readonly written: unknown;
  readonly place: number;
}

/**
 * The ingredients of a card as one list: written as a list, as a block of text, as `food: amount` pairs, or in
 * groups under headings ("topping: [...]").
 * @example ingredientEntries({ 'rolled oats': '2 cups', honey: '1/2 cup' }, isFood).length // 2
 */
export function ingredientEntries(written: unknown, isFood: IsFood): IngredientEntry[] {
  if (typeof written === 'string') return numbered(splitLines(written, isFood).lines);
  if (!Array.isArray(written)) return numbered(inGroups(written as Record<string, unknown>));
  const entries = written.flatMap((entry, place): IngredientEntry[] =>
    isGroup(entry)
      ? inGroups(entry as Record<string, unknown>).map((one) => ({ written: one, place }))
      : [{ written: entry, place }],
  );
  const texts = entries.map((entry) => entry.written).filter((one) => typeof one === 'string');
  const kept = new Set<unknown>(ingredientLines(texts));
  return entries.filter((entry) => typeof entry.written !== 'string' || kept.has(entry.written));
}

const numbered = (all: readonly unknown[]): IngredientEntry[] =>
  all.map((written, place) => ({ written, place }));

const isGroup = (entry: unknown): boolean =>
  typeof entry === 'object' &&
  entry !== null &&
  !Array.isArray(entry) &&
  Object.values(entry).some((value) => Array.isArray(value));

const inGroups = (groups: Record<string, unknown>): unknown[] =>
  Object.entries(groups).flatMap(([key, value]) => (Array.isArray(value) ? value : [{ [key]: value }]));
