import { readFileSync, statSync } from 'node:fs';
import { isMap, isScalar, isSeq, LineCounter, type Node, parse, parseDocument } from 'yaml';
import type { Complaint, FieldPath } from './place.ts';

/** A card or a table of foods is a few kilobytes; a megabyte is some other file. */
export const MOST_BYTES = 1_048_576;
/** Aliases expanded before the parser refuses: plenty for a card, far too few for a bomb. */
const MOST_ALIASES = 50;

const YAML_OPTIONS = { version: '1.2', schema: 'core', prettyErrors: false, uniqueKeys: true } as const;

export type KitchenFile =
  | { readonly ok: true; readonly value: unknown; readonly lineOf: (path: FieldPath) => number | undefined }
  | { readonly ok: false; readonly complaint: Complaint; readonly line?: number };

/**
 * Reads one YAML file. Never throws for what a file can hold: too big, binary, empty, tabs, not YAML,
 * too many aliases are all complaints. Lines are looked up only when somebody asks, since most files are right.
 */
export function readKitchenFile(file: string): KitchenFile {
  const text = readPlainText(file);
  return typeof text === 'string' ? readKitchenText(text) : { ok: false, complaint: text };
}

/** As `readKitchenFile`, for text already at hand. */
export function readKitchenText(text: string): KitchenFile {
  if (text.trim() === '') {
    return refuse('This file is empty.', 'Write a title, a yield and ingredients, or delete the file.');
  }
  try {
    const value: unknown = parse(text, { ...YAML_OPTIONS, logLevel: 'error', maxAliasCount: MOST_ALIASES });
    if (value === null || value === undefined) {
      return refuse('This file holds only comments.', 'Write a title, a yield and ingredients.');
    }
    return { ok: true, value, lineOf: lineFinder(text) };
  } catch {
    return whyNotYaml(text);
  }
}

/** The text of a file, or why it has none: too big, binary, not there. */
export function readPlainText(file: string): string | Complaint {
  try {
    const { size } = statSync(file);
    if (size > MOST_BYTES) {
      return complain(
        'This file is larger than 1 MB.',
        'Put one recipe in a file; a card is a few kilobytes.',
      );
    }
    const bytes = readFileSync(file);
    if (bytes.includes(0)) return notText();
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return notText();
    return complain(
      'This file cannot be read.',
      'Check that it is there and that its permissions allow reading.',
    );
  }
}

const notText = (): Complaint =>
  complain('This is not a text file.', 'Save the recipe as plain text in UTF-8, with the ending .yaml.');

const complain = (message: string, hint: string): Complaint => ({ path: [], message, hint });
const refuse = (message: string, hint: string, line?: number): KitchenFile => ({
  ok: false,
  complaint: complain(message, hint),
  ...(line === undefined ? {} : { line }),
});

/** Parses again, slowly, to say where and why. */
function whyNotYaml(text: string): KitchenFile {
  const lineCounter = new LineCounter();
  const document = parseDocument(text, { ...YAML_OPTIONS, lineCounter });
  const error = document.errors[0];
  if (!error) {
    return refuse(
      'This file repeats itself through anchors more often than a recipe needs.',
      'Write the ingredients out instead of using & and *.',
    );
  }
  const { line } = lineCounter.linePos(error.pos[0]);
  return refuse(
    `This is not YAML: ${firstSentence(error.message)}.`,
    adviceFor(error.code, text, line),
    line,
  );
}

const firstSentence = (message: string): string => message.split('\n')[0]?.replace(/[.:]\s*$/, '') ?? message;

function adviceFor(code: string, text: string, line: number): string {
  const written = text.split('\n')[line - 1] ?? '';
  if (code === 'TAB_AS_INDENT' || /^\s*\t/.test(written)) {
    return 'Indent with spaces; a tab is not allowed at the start of a line.';
  }
  if (code === 'DUPLICATE_KEY') return 'Keep one of the two.';
  if (/:\s.*:\s/.test(written)) {
    return 'Put quotes around a text that holds a colon: "Bake: 20 minutes".';
  }
  return 'Check the indentation and the quotes on this line and the one above it.';
}

function lineFinder(text: string): (path: FieldPath) => number | undefined {
  let known: { root: Node | null; lineCounter: LineCounter } | undefined;
  return (path) => {
    if (!known) {
      const lineCounter = new LineCounter();
      known = { root: parseDocument(text, { ...YAML_OPTIONS, lineCounter }).contents, lineCounter };
    }
    const offset = offsetOf(known.root, path);
    return offset === undefined ? undefined : known.lineCounter.linePos(offset).line;
  };
}

/** Where the deepest part of `path` that is there begins; a missing field points at what should hold it. */
function offsetOf(root: Node | null, path: FieldPath): number | undefined {
  let node: unknown = root;
  let offset = root?.range?.[0];
  for (const part of path) {
    const pair = isMap(node)
      ? node.items.find(({ key }) => (isScalar(key) ? String(key.value) : key) === String(part))
      : undefined;
    const next = pair ? pair.value : isSeq(node) && typeof part === 'number' ? node.items[part] : undefined;
    const start = pair ? (pair.key as Node | null)?.range?.[0] : (next as Node | undefined)?.range?.[0];
    if (start === undefined) return offset;
    offset = start;
    node = next;
  }
  return offset;
}
