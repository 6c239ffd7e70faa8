import type { Atom } from '../atoms.ts';
import { stem } from '../stem.ts';
import type { Token } from '../tokens.ts';
import { SHORT_WORDS } from '../vocabulary/short-words.ts';
import type { Phrase, Vocabulary } from '../vocabulary.ts';
import { toldVerb } from './told-verb.ts';
import { digitsAsWords, isKnown, unglued } from './typed-words.ts';

/** The tokens of one message and what they are looked up in. */
export interface Line {
  readonly tokens: readonly Token[];
  /** One form of each token's word, for phrases. */
  readonly forms: readonly string[];
  readonly vocabulary: Vocabulary;
  /** Epoch milliseconds and zone, for dates written out. */
  readonly nowMs: number;
  readonly timeZone: string;
}

/** An atom and the index of the token after it. */
export interface Found {
  readonly atom: Atom;
  readonly next: number;
}

/** Tokens ready to be read: spelling put right, hyphens inside words gone. */
export function lineOf(all: readonly Token[], vocabulary: Vocabulary, nowMs: number, timeZone: string): Line {
  const joined = all.filter((token, i) => !(token.raw === '-' && joinsWords(all[i - 1], token, all[i + 1])));
  const tokens = unglued(joined, vocabulary);
  tokens.forEach((token, i) => {
    if (isBefore(tokens, i)) Object.assign(token, { kind: 'word', typed: 'before', word: 'before' });
  });
  digitsAsWords(tokens, vocabulary);
  tokens.forEach((token, i) => {
    if (token.kind !== 'word') return;
    const short = SHORT_WORDS.get(token.word);
    if (short !== undefined) token.word = short;
    if (short !== undefined || isKnown(token.word, vocabulary)) return;
    token.word = toldVerb(tokens, i) ?? vocabulary.correct(token.word);
  });
  return { tokens, forms: tokens.map((token) => stem(token.word)), vocabulary, nowMs, timeZone };
}

/** "eat b4 game" is before; "batch B4", "B4 is gone" are a batch. */
const isBefore = (tokens: readonly Token[], i: number): boolean =>
  tokens[i]?.kind === 'code' &&
  tokens[i].typed === 'b4' &&
  tokens[i + 1]?.kind === 'word' &&
  !/^(?:batch|batches|lot|lots|trace|of|from|toss|tossed|label|move|moved|with|is)$/.test(
    tokens[i - 1]?.typed ?? 'of',
  ) &&
  !/^(?:is|was|has|are|to|from|in|and|went|labels?|batch)$/.test(tokens[i + 1]?.typed ?? '');

const joinsWords = (before: Token | undefined, sign: Token, after: Token | undefined): boolean =>
  before?.kind === 'word' && after?.kind === 'word' && !sign.spaced && !after.spaced;

export const wordAt = (line: Line, i: number): string => line.tokens[i]?.word ?? '';

export function spanText(line: Line, from: number, next: number): { text: string; word: string } {
  let text = '';
  let word = '';
  for (let i = from; i < next; i++) {
    const token = line.tokens[i];
    if (!token) break;
    text += (i > from ? ' ' : '') + token.typed;
    word += (i > from ? ' ' : '') + token.word;
  }
  return { text, word };
}

const LONG_NAME = 3;

/** "egg and potato squares" are the egg potato squares. */
const isJoinOfName = (line: Line, at: number, { stems, meaning }: Phrase): boolean =>
  meaning.sym === 'R' && stems.length >= LONG_NAME && /^(?:and|&|n)$/.test(line.forms[at] ?? '');

/** The longest phrase of the vocabulary that starts here. */
export function phraseAt(line: Line, i: number): { phrase: Phrase; next: number } | undefined {
  const row = line.vocabulary.phrases.get(line.forms[i] ?? '');
  if (!row) return undefined;
  for (const phrase of row) {
    const { stems } = phrase;
    let k = 1;
    let at = i + 1;
    for (; k < stems.length; k++, at++) {
      if (stems[k] !== line.forms[at] && isJoinOfName(line, at, phrase)) at++;
      if (stems[k] !== line.forms[at]) break;
    }
    if (k === stems.length) return { phrase, next: at };
  }
  return undefined;
}
