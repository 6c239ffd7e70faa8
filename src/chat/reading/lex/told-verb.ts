import { createCorrector } from '../spelling.ts';
import type { Token } from '../tokens.ts';

/** What is told of batches, in the past: a sentence that begins so is for the ledger. */
const VERBS =
  `made baked prepped finished wrapped moved froze thawed opened logged served handed gave tossed trashed threw dumped binned
  counted`.split(/\s+/);
/** Past forms nobody taught at school. */
const CHILDS: ReadonlyMap<string, string> = new Map([
  ['maked', 'made'],
  ['throwed', 'threw'],
  ['gived', 'gave'],
  ['taked', 'took'],
  ['eated', 'ate'],
  ['putted', 'put'],
  ['freezed', 'froze'],
]);
const STARTS = /^(?:i|we|just|ok|hey|so|have|has|already)$/;
const LONGEST_LEAD = 3;

const correct = createCorrector(new Set(VERBS), VERBS, 3);

/**
 * The verb a misspelled first word stands for, when a number comes after it: "mde 30 oat bars", "we srved 12". Elsewhere
 * the same letters may be a name.
 */
export function toldVerb(tokens: readonly Token[], i: number): string | undefined {
  const word = tokens[i]?.word ?? '';
  const child = CHILDS.get(word);
  if (child !== undefined) return child;
  const at = /^(?:out|up)$/.test(tokens[i + 1]?.word ?? '') ? i + 2 : i + 1;
  if (i > LONGEST_LEAD || tokens[at]?.kind !== 'number') return undefined;
  if (!tokens.slice(0, i).every((token) => STARTS.test(token.word))) return undefined;
  const right = correct(word);
  return right === word ? undefined : right;
}
