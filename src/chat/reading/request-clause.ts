import type { Atom } from './atoms.ts';
import { type Lexed, partOf } from './lexed.ts';

/** Fewer words than this are a request and nothing else. */
const LONG = 12;

const ENDS: ReadonlySet<string> = new Set(['.', ',', ';', '?', '-']);
/** Words that begin a part of a sentence, and belong to it, when a question or a wish comes after them. */
const BEGINS: ReadonlySet<string> = new Set(['so', 'but', 'and', 'then']);
const BEGINS_ASKING =
  /^(?:could|can|would|will|may|should|please|pls|how|what|whats|which|where|i|we|is|are|do|does|did|tell|give|show)$/;

/** How people begin to ask or to say what they need. */
const ASKS =
  /^ (?:(?:so|but|and|then|well|ok|hi|hello|hey|now) )*(?:(?:please|pls|kindly) |(?:could|can|would|will|may|might|should|shall|do|does|did|is|are) (?:you|u|i|we|it|that|there|they|the|someone|any) |(?:how|what|whats|which|where|who|when|until|why) |(?:i|we) (?:would|will|need|want|should|have to|d) |(?:i|we) (?:am|are) (?:looking|trying|hoping) |(?:tell|give|show|let|make|scale|list|plan|check|find|convert|swap) )/;

/**
 * The part of a long message that asks: people say first why they ask, and what they tell then has the words of other
 * requests in it. Nothing where the message is short or asks in none of its parts.
 * @example " we have the team coming W after practice so could you scale R to N P " // " so could you scale R to N P "
 */
export function requestClause(lexed: Lexed): Lexed | undefined {
  if (lexed.seen.length < LONG) return undefined;
  const parts = clauses(lexed.atoms).map((atoms) => partOf(lexed, atoms));
  if (parts.length < 2) return undefined;
  return parts
    .filter(({ shape, syms }) => ASKS.test(shape) && (syms.has('R') || syms.has('M') || syms.has('P')))
    .at(-1);
}

function clauses(atoms: readonly Atom[]): Atom[][] {
  const parts: Atom[][] = [[]];
  atoms.forEach((atom, i) => {
    if (BEGINS.has(atom.sym) && BEGINS_ASKING.test(atoms[i + 1]?.sym ?? '')) parts.push([]);
    parts.at(-1)?.push(atom);
    if (ENDS.has(atom.sym)) parts.push([]);
  });
  return parts.filter((part) => part.length > 1);
}
