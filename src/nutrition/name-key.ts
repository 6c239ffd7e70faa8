const ARTICLES = new Set(['the', 'a', 'an', 'some', 'our', 'those', 'these', 'of']);

/**
 * A name as the indexes key it: lower case, no punctuation, no articles, each word in the singular.
 * @example nameKey('The Oat-Bars!') // 'oat bar'
 */
export function nameKey(words: string): string {
  return words
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim()
    .split(' ')
    .filter((word) => !ARTICLES.has(word))
    .map(singular)
    .join(' ');
}

function singular(word: string): string {
  if (word === 'oats') return 'oat';
  if (word.length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (word.length > 5 && /(?:oes|ches|shes|xes)$/.test(word)) return word.slice(0, -2);
  return word.length > 3 && /[^su]s$/.test(word) ? word.slice(0, -1) : word;
}
