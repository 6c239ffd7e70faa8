import { existsSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '../nutrition/problem.ts';

/** Far more than a kitchen has, far fewer than a mistaken path such as a home folder holds. */
const MOST_FILES = 2000;
const DEEPEST = 4;

/**
 * The folder's real path.
 * @throws Problem `bad_option` when it is not there or is a file.
 */
export function requireFolder(directory: string): string {
  const hint =
    'Give a folder that holds kitchen.yaml or a folder cards/ with recipes: --kitchen ./my-kitchen';
  if (!existsSync(directory)) throw new Problem('bad_option', `There is no folder "${directory}".`, hint);
  if (!statSync(directory).isDirectory()) {
    throw new Problem('bad_option', `"${directory}" is a file, not a folder.`, hint);
  }
  return realpathSync(directory);
}

/** What a kitchen is written in. */
const KITCHEN_FILE = /\.(?:ya?ml|csv)$/i;

/**
 * A kitchen's own folder that holds nothing would leave the built-in recipes to answer in its name.
 * @throws Problem `bad_option` when no file in it is one of a kitchen's.
 */
export function requireKitchenIn(directory: string): void {
  if (filesIn(directory, KITCHEN_FILE).length > 0) return;
  throw new Problem(
    'bad_option',
    `The folder "${directory}" holds no kitchen: no kitchen.yaml, no recipe and no table of foods.`,
    'Put a recipe into its folder cards/, or leave --kitchen out to ask the built-in kitchen.',
  );
}

export const YAML_FILE = /\.ya?ml$/i;

/**
 * Files below a folder whose names match, sorted: a link that leads back to a folder already seen is not followed
 * again. A folder that is not there has no files.
 */
export function filesIn(directory: string, name: RegExp): string[] {
  const found: string[] = [];
  walk(directory, name, 0, new Set(), found);
  return found.sort();
}

function walk(directory: string, name: RegExp, depth: number, seen: Set<string>, found: string[]): void {
  const real = realPathOf(directory);
  if (real === undefined || seen.has(real) || depth > DEEPEST) return;
  seen.add(real);
  for (const entry of readdirSync(real, { withFileTypes: true })) {
    if (found.length >= MOST_FILES || entry.name.startsWith('.')) continue;
    const path = join(directory, entry.name);
    const kind = entry.isSymbolicLink() ? kindOfTarget(path) : kindOf(entry);
    if (kind === 'folder') walk(path, name, depth + 1, seen, found);
    else if (kind === 'file' && name.test(entry.name)) found.push(path);
  }
}

const kindOf = (entry: { isDirectory(): boolean; isFile(): boolean }): 'folder' | 'file' | 'other' =>
  entry.isDirectory() ? 'folder' : entry.isFile() ? 'file' : 'other';

/** A link that leads nowhere, or round in a circle, is kept as a file so that reading it says what is wrong. */
function kindOfTarget(path: string): 'folder' | 'file' | 'other' {
  const real = realPathOf(path);
  return real === undefined ? 'file' : kindOf(statSync(real));
}

function realPathOf(path: string): string | undefined {
  try {
    return realpathSync(path);
  } catch {
    return undefined;
  }
}
