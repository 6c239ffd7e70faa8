import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { nameOf, needsOf } from './names.ts';

/**
 * The counts of a plan: everybody (`quantity`), who needs what (`needs`), pieces each (`portion`), and in `unclear` every
 * other number as it was said, since a count that is passed over is somebody who gets nothing.
 */
export function planCounts({ seen }: Lexed): Slots {
  const needs: SlotValue[] = [];
  const unclear: string[] = [];
  let quantity: number | undefined;
  let portion: number | undefined;
  seen.forEach((atom, i) => {
    const people = countAt(atom, seen[i - 1]);
    if (atom.sym === 'C') unclear.push(atom.text);
    if (people === undefined) return;
    const avoided = needAfter(seen, i);
    if (avoided) needs.push({ ...avoidedBy(avoided), people });
    else if (atom.sym !== 'N') return;
    else if (isPortion(seen, i)) portion = people;
    else if (quantity === undefined) quantity = people;
    else if (people !== quantity) unclear.push(`${atom.text} ${seen[i + 1]?.text ?? ''}`.trim());
  });
  return {
    ...(quantity === undefined ? {} : { quantity }),
    ...(needs.length > 0 ? { needs } : {}),
    ...(portion === undefined ? {} : { portion }),
    ...(unclear.length > 0 ? { unclear } : {}),
  };
}

/** "a" counts one, but "three with a milk allergy" have one allergy each. */
function countAt({ sym, value }: Atom, before: Atom | undefined): number | undefined {
  if (sym === 'N') return value;
  return sym === 'one' || (sym === 'a' && !/^(?:with|have|has)$/.test(before?.sym ?? '')) ? 1 : undefined;
}

/** "2 oat bars each", "2 a person". */
function isPortion(seen: readonly Atom[], i: number): boolean {
  const [next, after] = [seen[i + 1], seen[i + 2]];
  const each = /^[PR]$/.test(next?.sym ?? '') && next?.unit !== 'person' ? after : next;
  return /^(?:each|apiece|per)$/.test(each?.sym ?? '');
}

const avoidedBy = (atoms: readonly Atom[]): { avoid: string[]; foods?: string[] } => {
  const foods = atoms.filter(({ needs }) => needs === undefined).map(nameOf);
  return { avoid: needsOf(atoms), ...(foods.length > 0 ? { foods } : {}) };
};

const BETWEEN =
  /^(?:P|are|is|who|whom|which|must|with|have|has|need|needs|eat|were|of|them|a|an|that|the|people|allergic|allergy|kid|x|to|no|avoid|avoids|avoiding|cant)$/;
const AVOIDED = /^[AVF]$/;

/** What belongs to the count at `i`: "5 who are nut free and dairy free", "1 sesame", "1 allergic to strawberries". */
function needAfter(seen: readonly Atom[], i: number): Atom[] | undefined {
  let k = i + 1;
  while (BETWEEN.test(seen[k]?.sym ?? '')) k++;
  if (!AVOIDED.test(seen[k]?.sym ?? '')) return undefined;
  const list: Atom[] = [];
  for (; seen[k]; k++) {
    const atom = seen[k];
    if (atom && AVOIDED.test(atom.sym)) list.push(atom);
    else if (!/^(?:and|&|\+|or)$/.test(atom?.sym ?? '') || !AVOIDED.test(seen[k + 1]?.sym ?? '')) break;
  }
  return list;
}
