const FIRST = '^';

/**
 * What of a message speaks for an intent: each word and symbol of its shape once, and which of them stands first.
 * @example evidenceWords(' N R for W ') // ['^N', 'N', 'R', 'for', 'W']
 */
export function evidenceWords(shape: string): Set<string> {
  const words = shape.trim().split(' ');
  return words[0] === '' ? new Set() : new Set([`${FIRST}${words[0]}`, ...words]);
}
