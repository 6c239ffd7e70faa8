/**
 * How a word sounds, roughly: its first letter and the consonants after it. Two words spelled in a hurry by the same
 * sound meet here.
 * @example soundOf('choaking') // 'xkng', as soundOf('choking')
 */
export const soundOf = (word: string): string => {
  const sounds = word
    .replace(/ph/g, 'f')
    .replace(/^ch|tch/g, 'x')
    .replace(/ck|q|ch|c(?![eiy])/g, 'k')
    .replace(/z|c/g, 's')
    .replace(/gh|h(?=[aeiouy]|$)/g, '')
    .replace(/(.)\1+/g, '$1');
  return sounds.slice(0, 1).replace(/[aeiouy]/, 'a') + sounds.slice(1).replace(/[aeiouyw]/g, '');
};
