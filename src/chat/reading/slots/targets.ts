import { NUTRIENTS } from '../../../nutrition/nutrients.ts';
import type { Target } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';

const MOST = new Set([
  'under',
  'below',
  'less',
  'most',
  'max',
  'maximum',
  'fewer',
  'within',
  'up',
  'lower',
  'reduce',
  'cut',
  'limit',
]);
const LEAST = new Set([
  'least',
  'over',
  'above',
  'more',
  'min',
  'minimum',
  'keep',
  'hold',
  'hit',
  'higher',
  'reach',
  'get',
]);

/** "at least 20 g protein", "under 250 kcal": each nutrient that has an amount beside it. */
export function targets(lexed: Lexed): Target[] {
  const { seen } = lexed;
  const found: Target[] = [];
  seen.forEach((atom, i) => {
    if (atom.sym !== 'M') return;
    const at = amountBeside(seen, i);
    const amount = seen[at];
    if (amount?.value === undefined) return;
    const name = atom.id ?? atom.word;
    const unit = amount.unit ?? NUTRIENTS.find((fact) => fact.name === name)?.unit ?? 'g';
    const range = rangeOf(seen, at);
    if (range) {
      found.push({ nutrient: name, amount: range.least, unit, bound: 'least' });
      found.push({ nutrient: name, amount: range.most, unit, bound: 'most' });
      return;
    }
    const bound = boundBefore(seen, Math.min(at, i));
    found.push({ nutrient: name, amount: amount.value, unit, ...(bound ? { bound } : {}) });
  });
  return found;
}

/** "20-22 g", "between 20 and 22 g": both ends. */
function rangeOf(seen: readonly Atom[], at: number): { least: number; most: number } | undefined {
  const amount = seen[at];
  if (amount?.value === undefined) return undefined;
  if (amount.most !== undefined) return { least: amount.value, most: amount.most };
  const [opens, low, joins] = [seen[at - 3], seen[at - 2], seen[at - 1]];
  const isBetween = /^(?:between|from)$/.test(opens?.sym ?? '') && /^(?:and|to|-)$/.test(joins?.sym ?? '');
  if (!isBetween || low?.value === undefined || !isAmount(low)) return undefined;
  return { least: Math.min(low.value, amount.value), most: Math.max(low.value, amount.value) };
}

const isAmount = (atom: Atom | undefined): boolean =>
  atom?.sym === 'N' || (atom?.sym === 'Q' && /^(g|mg|mcg|kg|oz)$/.test(atom.unit ?? ''));

function amountBeside(seen: readonly Atom[], i: number): number {
  if (isAmount(seen[i - 1])) return i - 1;
  if (seen[i - 1]?.sym === 'of' && isAmount(seen[i - 2])) return i - 2;
  for (let k = i + 1; k <= i + 5; k++) {
    const atom = seen[k];
    if (!atom || atom.sym === 'M' || atom.sym === 'and') return -1;
    if (isAmount(atom))
      return seen[k + 1]?.sym === 'M' || seen[k + 1]?.sym === 'P' || seen[k + 1]?.sym === 'pieces' ? -1 : k;
  }
  return -1;
}

function boundBefore(seen: readonly Atom[], i: number): 'least' | 'most' | undefined {
  for (let k = i - 1; k >= Math.max(0, i - 5); k--) {
    const sym = seen[k]?.sym ?? '';
    if (sym === 'M') return undefined;
    if (MOST.has(sym)) return 'most';
    if (LEAST.has(sym)) return 'least';
  }
  return undefined;
}
