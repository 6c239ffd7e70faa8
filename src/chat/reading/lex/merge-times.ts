import type { Atom } from '../atoms.ts';
import { clock } from './moments.ts';

const BEFORE = new Set(['at', 'by', 'since', 'around', 'until', 'till', '@', 'from']);
/** What makes the number after "at" a count or a reading. */
const COUNTED = new Set(['P', 'U', 'R', 'F', 'A', 'pieces', 'degrees', 'per', 'each', 'x', 'M']);

const isDay = ({ sym, moment }: Atom): boolean =>
  sym === 'W' && moment?.day !== undefined && moment.time === undefined;
/** "mon 9 order milk": what is done at that hour. */
const VERB_AFTER =
  /^(?:order|check|soak|thaw|clean|pack|prep|call|wash|label|bake|pull|load|rotate|restock|unload|sanitize|email|text|start|turn|take|to)$/;

/** "at 10", "since 6": an hour nobody called morning or evening. */
export function mergeTimes(atoms: readonly Atom[]): readonly Atom[] {
  return atoms.flatMap((atom, i) => {
    const before = atoms[i - 1];
    if (isMinutes(atoms, i)) return [];
    if (atom.sym !== 'N' || !before || atom.value === undefined) return atom;
    if (!BEFORE.has(before.sym) && !isDay(before)) return atom;
    if (isDay(before) && !VERB_AFTER.test(atoms[i + 1]?.sym ?? '')) return atom;
    if (!Number.isInteger(atom.value) || atom.value < 1 || atom.value > 12 || atom.most !== undefined)
      return atom;
    if (
      COUNTED.has(atoms[i + 1]?.sym ?? '') ||
      /^(L|T|temp|temperature|is|reads)$/.test(atoms[i - 2]?.sym ?? '')
    )
      return atom;
    const minutes = isMinutes(atoms, i + 1) ? atoms[i + 1] : undefined;
    const text = minutes === undefined ? atom.text : `${atom.text} ${minutes.text}`;
    return {
      sym: 'W',
      text,
      word: text,
      moment: { time: clock(likelyHour(atom.value), minutes?.value ?? 0), unsure: true },
    };
  });
}

/** "at 2 30": the half hour said as a number of its own. */
const isMinutes = (atoms: readonly Atom[], i: number): boolean => {
  const [at, hour, minute] = [atoms[i - 2], atoms[i - 1], atoms[i]];
  return (
    minute?.sym === 'N' &&
    /^[0-5][05]$/.test(minute.text) &&
    hour?.sym === 'N' &&
    /^(?:[1-9]|1[0-2])$/.test(hour.text) &&
    at !== undefined &&
    /^(?:at|by|around|@)$/.test(at.sym) &&
    !COUNTED.has(atoms[i + 1]?.sym ?? '')
  );
};

/** A kitchen is awake from 6 in the morning to 5 in the afternoon. */
export const likelyHour = (hour: number): number => (hour < 6 ? hour + 12 : hour);
