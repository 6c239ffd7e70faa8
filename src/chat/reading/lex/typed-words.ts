import { stem } from '../stem.ts';
import type { Token } from '../tokens.ts';
import type { Vocabulary } from '../vocabulary.ts';

const SHORTEST_GLUED = 6;
const SHORTEST_PART = 3;

/** Names written as one word come apart: "cherrybars", "sunbutter", "turkeyroll". */
export function unglued(tokens: readonly Token[], vocabulary: Vocabulary): readonly Token[] {
  const isStrange = ({ kind, word }: Token): boolean => kind === 'word' && !isKnown(word, vocabulary);
  if (!tokens.some(isStrange)) return tokens;
  return tokens.flatMap((token) => {
    const parts = isStrange(token) ? partsOf(token, vocabulary) : [];
    return parts.length === 0
      ? [token]
      : parts.map((word, i) => ({ ...token, raw: word, typed: word, word, spaced: i === 0 && token.spaced }));
  });
}

export const isKnown = (word: string, { known }: Vocabulary): boolean =>
  known.has(word) || known.has(stem(word));

/** The two words of a name of the kitchen or of a food that a strange word is made of. */
function partsOf({ word }: Token, { phrases }: Vocabulary): string[] {
  if (word.length < SHORTEST_GLUED || word.length > 24) return [];
  for (let at = SHORTEST_PART; at <= word.length - SHORTEST_PART; at++) {
    const [first, second] = [word.slice(0, at), word.slice(at)];
    const row = phrases.get(stem(first));
    const last = stem(second);
    const isName = row?.some(
      ({ stems, meaning }) => stems[1] === last && stems.length === 2 && /^[RF]$/.test(meaning.sym),
    );
    if (isName) return [first, second];
  }
  return [];
}

const SOUNDS: ReadonlyMap<string, string> = new Map([
  ['2', 'to'],
  ['4', 'for'],
]);

/** "oat bars 2 48", "bites 4 30": a digit that sounds like a word, before the number that is meant. */
export function digitsAsWords(tokens: readonly Token[], vocabulary: Vocabulary): void {
  tokens.forEach((token, i) => {
    const sounds = SOUNDS.get(token.raw);
    const next = tokens[i + 1];
    if (sounds === undefined || next?.kind !== 'number' || !/^\d{2,4}$/.test(next.raw) || !next.spaced)
      return;
    const before = tokens[i - 1]?.word ?? '';
    const isThing = vocabulary.phrases
      .get(stem(before))
      ?.some(({ stems, meaning }) => stems.length === 1 && /^[PR]$/.test(meaning.sym));
    if (!isThing && !/^(?:it|them|this|that|recipe|batch|down|up|those|these|oats|mix)$/.test(before)) return;
    Object.assign(token, { kind: 'word', typed: sounds, word: sounds });
  });
}
