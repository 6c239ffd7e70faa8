/**
 * One form for one and many, so that "cherries" and "cherry" meet. Both sides of every comparison use it, so it
 * need not be a dictionary word.
 * @example stem('berries') // 'berry'
 */
export function stem(word: string): string {
  const { length } = word;
  if (length > 4 && word.endsWith('ie')) return `${word.slice(0, -2)}y`;
  if (length < 4 || word.charCodeAt(length - 1) !== 115) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(?:[cs]h|ss|x|o)es$/.test(word)) return word.slice(0, -2);
  if (/(?:ss|us|is)$/.test(word)) return word;
  return word.slice(0, -1);
}

/** Every word of a phrase in its one form. */
export const stems = (phrase: string): string[] => words(phrase).map(stem);

/** The words of a phrase, lower case, hyphens and signs apart. */
export const words = (phrase: string): string[] =>
  phrase
    .toLowerCase()
    .replaceAll("'", '')
    .match(/[a-z0-9%.]+/g) ?? [];
