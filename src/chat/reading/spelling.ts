import MiniSearch from 'minisearch';
import { soundOf } from './sound.ts';
import { URGENT_WORDS } from './vocabulary/urgent-words.ts';

/** Puts a misspelled word right, or leaves it as it is. */
export type Corrector = (word: string) => string;

const MOST_REMEMBERED = 5_000;
const SHORTEST = 4;

/**
 * A corrector over a vocabulary: two neighbours in the wrong order, else a word of danger that sounds the same, else the nearest word within one edit (two from
 * seven letters), same first letter. The index is built at the first unknown word and answers are remembered.
 */
export function createCorrector(
  known: ReadonlySet<string>,
  targets: readonly string[],
  shortest = SHORTEST,
): Corrector {
  const remembered = new Map<string, string>();
  let index: MiniSearch<{ id: string }> | undefined;

  const nearest = (word: string): string | undefined => {
    if (!index) {
      index = new MiniSearch({ fields: ['id'] });
      index.addAll([...new Set(targets)].filter((target) => target.length >= shortest).map((id) => ({ id })));
    }
    const edits = word.length < 7 ? 1 : 2;
    const found = index.search(word, { fuzzy: edits, prefix: false });
    const isNear = (id: string) => id[0] === word[0] && (word.length > shortest || id.at(-1) === word.at(-1));
    return found.find((hit) => isNear(hit.id))?.id;
  };

  return (word) => {
    const before = remembered.get(word);
    if (before !== undefined) return before;
    const right =
      swapped(word, known) ??
      urgentBySound(word) ??
      (word.length >= shortest && word.length < 20 ? nearest(word) : undefined) ??
      word;
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    remembered.set(word, right);
    return right;
  };
}

const urgent: ReadonlyMap<string, string> = new Map(URGENT_WORDS.map((word) => [soundOf(word), word]));
const SHORTEST_SOUND = 3;

/** A word of danger that sounds the same, and is about as long: "breth", "choaking", "siezure". */
function urgentBySound(word: string): string | undefined {
  const sound = soundOf(word);
  const meant = sound.length < SHORTEST_SOUND ? undefined : urgent.get(sound);
  return meant !== undefined && Math.abs(meant.length - word.length) <= 2 ? meant : undefined;
}

/** "thraot" has two neighbours in the wrong order. */
function swapped(word: string, known: ReadonlySet<string>): string | undefined {
  if (word.length < 3 || word.length > 20) return undefined;
  for (let i = 0; i + 1 < word.length; i++) {
    const candidate = word.slice(0, i) + word.charAt(i + 1) + word.charAt(i) + word.slice(i + 2);
    if (candidate !== word && known.has(candidate)) return candidate;
  }
  return undefined;
}
