import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { loadBook } from '../../src/book/load-book.ts';
import { evidenceWords } from '../../src/chat/reading/evidence/evidence-words.ts';
import { lex } from '../../src/chat/reading/lexed.ts';
import type { Lesson } from './learn.ts';

export const FOLDERS = ['phrases', 'blind', 'blind-two', 'blind-three'];

/** These are found by their signs, before any weighing. */
const BEFORE_WEIGHING = new Set(['emergency', 'medical']);

// From the root of the repository, where npm runs scripts and tests.
const book = loadBook(['recipes']);
const nowMs = Date.parse('2026-11-25T10:00:00-06:00');

interface Row {
  readonly say: string;
  readonly after?: string;
  readonly intents: readonly string[];
}

/** Requests of some folders of tests/chat as lessons; one that leans on another request teaches nothing by itself. */
export const lessonsIn = (folders: readonly string[]): Lesson[] =>
  folders
    .flatMap((folder) => rowsIn(`tests/chat/${folder}`))
    .filter(({ after, intents }) => after === undefined && !BEFORE_WEIGHING.has(intents[0] ?? ''))
    .map(({ say, intents }) => ({
      words: [...evidenceWords(lex(say, book, nowMs).shape)],
      intent: intents[0] ?? 'unknown',
    }));

function rowsIn(folder: string): Row[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .flatMap((file) => (parse(readFileSync(`${folder}/${file}`, 'utf8')) as unknown[]).map(rowOf));
}

/** Both ways our phrases are written down: a list, or names and values. */
function rowOf(row: unknown): Row {
  if (Array.isArray(row)) return { say: String(row[0]), intents: [row[1]].flat() as string[] };
  const { say, after, intent } = row as { say: string; after?: string; intent: string | string[] };
  return { say, intents: [intent].flat(), ...(after === undefined ? {} : { after }) };
}
