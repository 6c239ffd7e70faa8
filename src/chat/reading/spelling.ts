import MiniSearch from 'minisearch';

/** Puts a misspelled word right, or leaves it as it is. */
export type Corrector = (word: string) => string;

const MOST_REMEMBERED = 5_000;
const SHORTEST = 4;

/**
 * A corrector over a vocabulary: two neighbours in the wrong order, else the nearest word within one edit (two from
 * seven letters), same first letter. The index is built at the first unknown word and answers are remembered.
 */
export function createCorrector(known: ReadonlySet<string>, targets: readonly string[]): Corrector {
  const remembered = new Map<string, string>();
  let index: MiniSearch<{ id: string }> | undefined;

  const nearest = (word: string): string | undefined => {
    if (!index) {
      index = new MiniSearch({ fields: ['id'] });
      index.addAll([...new Set(targets)].filter((target) => target.length >= SHORTEST).map((id) => ({ id })));
    }
    const edits = word.length < 7 ? 1 : 2;
    const found = index.search(word, { fuzzy: edits, prefix: false });
    const isNear = (id: string) => id[0] === word[0] && (word.length > SHORTEST || id.at(-1) === word.at(-1));
    return found.find((hit) => isNear(hit.id))?.id;
  };

  return (word) => {
    const before = remembered.get(word);
    if (before !== undefined) return before;
    const right =
      swapped(word, known) ??
      (word.length >= SHORTEST && word.length < 20 ? nearest(word) : undefined) ??
      word;
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    remembered.set(word, right);
    return right;
  };
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
