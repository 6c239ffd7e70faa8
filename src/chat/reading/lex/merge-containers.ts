import type { Atom } from '../atoms.ts';

/** What a finished dish is handed out in. */
const CONTAINERS: ReadonlySet<string> = new Set(['bag', 'jar', 'packet', 'tub', 'box', 'bottle', 'slice']);

export const isContainerUnit = (unit: string | undefined): boolean =>
  unit !== undefined && CONTAINERS.has(unit);
/** Fewer cups than this may be an amount of it. */
const MANY_CUPS = 6;

/**
 * "45 bags of trail mix" counts bags, as "45 bars" counts bars; "2 cups of granola" stays an amount. A message that
 * names a food beside the dish may measure that food, and is left alone.
 */
export function mergeContainers(atoms: readonly Atom[]): readonly Atom[] {
  if (!atoms.some(isContainer) || !atoms.some(isDish) || atoms.some(({ sym }) => sym === 'F')) return atoms;
  return atoms.flatMap((atom) =>
    isContainer(atom)
      ? [
          { ...atom, sym: 'N', unit: undefined },
          { sym: 'P', text: atom.unit ?? '', word: atom.unit ?? '', unit: atom.unit },
        ]
      : [atom],
  );
}

const isDish = ({ sym, id }: Atom): boolean => (sym === 'R' || sym === 'P') && id !== undefined;

const isContainer = ({ sym, unit, value }: Atom): boolean =>
  sym === 'Q' &&
  unit !== undefined &&
  (CONTAINERS.has(unit) || (unit === 'cup' && Number.isInteger(value) && (value ?? 0) >= MANY_CUPS));
