import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { SlotValue } from '../../src/chat/slots.ts';
import type { Book } from '../../src/nutrition/book.ts';

export interface Phrase {
  readonly file: string;
  readonly text: string;
  /** Intents that are right; the first is the best. */
  readonly intents: readonly string[];
  readonly slots: { readonly [name: string]: SlotValue };
}

const folder = new URL('../chat/phrases/', import.meta.url);

/** All phrases of the project, with what each should be read as. */
export function loadPhrases(): Phrase[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .flatMap((file) => {
      const rows: unknown[] = parse(readFileSync(new URL(file, folder), 'utf8'));
      return rows.map((row) => {
        const [text, intents, slots] = row as [string, string | string[], Phrase['slots']?];
        return { file, text, intents: typeof intents === 'string' ? [intents] : intents, slots: slots ?? {} };
      });
    });
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9%]+/g, ' ')
    .trim()
    .split(' ')
    .map((word) => word.replace(/(?:ies)$/, 'y').replace(/(?<=..)s$/, ''))
    .join(' ');

/** Whether a value read is the value said: names by the kitchen's own id, title or alias, numbers to 0.01. */
export function isSame(said: SlotValue | undefined, read: SlotValue | undefined, book: Book): boolean {
  if (typeof said === 'number') return typeof read === 'number' && Math.abs(said - read) < 0.01;
  if (typeof said === 'string') return typeof read === 'string' && sameName(said, read, book);
  if (Array.isArray(said)) {
    const list = read as readonly SlotValue[];
    return (
      Array.isArray(read) &&
      said.length === list.length &&
      said.every((one) => list.some((other) => isSame(one, other, book)))
    );
  }
  if (said !== null && typeof said === 'object' && read !== null && typeof read === 'object') {
    const [one, other] = [said, read] as [Record<string, SlotValue>, Record<string, SlotValue>];
    return Object.keys(one).every((name) => isSame(one[name], other[name], book));
  }
  return said === read;
}

function sameName(said: string, read: string, book: Book): boolean {
  if (plain(said) === plain(read)) return true;
  const thing = book.recipes.get(read) ?? book.foods.get(read);
  const place = book.settings.locations.find((location) => location.id === read);
  const names = thing
    ? ['title' in thing ? thing.title : thing.name, ...thing.aliases]
    : place
      ? [place.name]
      : [];
  return names.some((name) => plain(name) === plain(said));
}
