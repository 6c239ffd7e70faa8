import type { Need } from '../../../nutrition/allergens.ts';
import type { Atom } from '../atoms.ts';

const BEFORE = new Set(['no', 'without', 'sans', 'avoid', 'avoiding', 'minus', 'excluding', 'zero']);
const VERB = new Set(['have', 'eat', 'tolerate', 'do']);
const NOT = new Set(['cant', 'cannot', 'dont', 'doesnt', 'not', 'never']);
const AFTER = new Set([
  'free',
  'allergy',
  'allergies',
  'allergic',
  'intolerant',
  'intolerance',
  'sensitivity',
  'less',
]);
const JOIN = new Set(['and', 'or', ',', '/', '&', '+', 'nor']);
/** "We have no milk" is about the shelf. */
const SHELF_BEFORE = new Set(['have', 'got', 'theres', 'there', 'has', 'weve', 'is', 'are', 'had']);

const noun = (atom: Atom | undefined): readonly Need[] | undefined =>
  atom && (atom.sym === 'V' || atom.sym === 'F') ? atom.needs : undefined;

/** Turns "no nuts", "nut and dairy free", "allergic to milk" into one need each. */
export function mergeNeeds(atoms: readonly Atom[]): readonly Atom[] {
  if (!atoms.some((atom) => noun(atom) !== undefined)) return atoms;
  const merged: Atom[] = [];
  let i = 0;
  while (i < atoms.length) {
    const found = freeListAt(atoms, i) ?? avoidedListAt(atoms, i);
    if (found) {
      merged.push(...found.needs);
      i = found.next;
    } else {
      const atom = atoms[i];
      if (atom) merged.push(atom);
      i++;
    }
  }
  return merged;
}

interface List {
  readonly needs: readonly Atom[];
  readonly next: number;
}

function listAt(atoms: readonly Atom[], i: number): { nouns: Atom[]; next: number } | undefined {
  const nouns: Atom[] = [];
  let at = i;
  for (;;) {
    const atom = atoms[at];
    if (!atom || !noun(atom)) break;
    nouns.push(atom);
    at++;
    if (JOIN.has(atoms[at]?.sym ?? '') && noun(atoms[at + 1])) at++;
    else break;
  }
  return nouns.length > 0 ? { nouns, next: at } : undefined;
}

const asNeeds = (nouns: readonly Atom[]): Atom[] => nouns.map((atom) => ({ ...atom, sym: 'A' }));

/** "nut free", "egg and milk free", "peanut allergy". */
function freeListAt(atoms: readonly Atom[], i: number): List | undefined {
  const list = listAt(atoms, i);
  if (!list || !AFTER.has(atoms[list.next]?.sym ?? '')) return undefined;
  return { needs: asNeeds(list.nouns), next: list.next + 1 };
}

/** "no nuts", "without dairy or egg", "allergic to milk", "can't have gluten", "free of soy". */
function avoidedListAt(atoms: readonly Atom[], i: number): List | undefined {
  const lead = leadAt(atoms, i);
  if (lead === undefined) return undefined;
  const list = listAt(atoms, lead);
  if (!list) return undefined;
  const isShelf =
    atoms[i]?.sym === 'no' &&
    (SHELF_BEFORE.has(atoms[i - 1]?.sym ?? '') ||
      (list.nouns[0]?.sym === 'F' && /^(left|anymore|in|here|today)$/.test(atoms[list.next]?.sym ?? '')));
  const isOfDishes =
    isShelf && /^(?:recipes?|snacks?|P|R|dishes|options?|things?|ones)$/.test(atoms[i - 2]?.sym ?? '');
  return isShelf && !isOfDishes ? undefined : { needs: asNeeds(list.nouns), next: list.next };
}

function leadAt(atoms: readonly Atom[], i: number): number | undefined {
  const sym = atoms[i]?.sym ?? '';
  const next = atoms[i + 1]?.sym ?? '';
  let at: number | undefined;
  if (BEFORE.has(sym)) at = i + 1;
  else if (/^(allergic|allergy|allergies|intolerant|sensitive)$/.test(sym) && next === 'to') at = i + 2;
  else if (sym === 'free' && /^(of|from)$/.test(next)) at = i + 2;
  else if (NOT.has(sym) && VERB.has(next)) at = i + 2;
  while (at !== undefined && /^(any|all|the)$/.test(atoms[at]?.sym ?? '')) at++;
  return at;
}
