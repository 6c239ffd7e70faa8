/** Where Slack would read a command to page somebody: `<!channel>`, `<@U…>`, `<#C…>`. */
const CONTROL_SEQUENCE = /<(?=[!@#])/g;

/**
 * Text for the top-level `text` of a message: the three characters Slack reads as control are escaped, nothing else, and
 * the result holds at most `most` characters.
 * @example escaped('<!channel> & co', 100) // '&lt;!channel&gt; &amp; co'
 */
export function escaped(text: string, most: number): string {
  const parts = Array.from(text, escapedCharacter);
  let length = 0;
  const fits = parts.findIndex((part) => {
    length += part.length;
    return length > most;
  });
  if (fits < 0) return parts.join('');
  let kept = parts.slice(0, fits).join('');
  while (kept.length >= most) kept = kept.slice(0, Math.max(0, kept.lastIndexOf(' ', most - 2)));
  return `${kept}…`;
}

function escapedCharacter(character: string): string {
  if (character === '&') return '&amp;';
  if (character === '<') return '&lt;';
  return character === '>' ? '&gt;' : character;
}

/**
 * Text for `plain_text` and rich text, which Slack shows as written. They page nobody, yet the control sequences are broken
 * all the same, so that a copy of the text elsewhere cannot.
 * @example inert('<!here> oats') // '‹!here> oats'
 */
export function inert(text: string): string {
  return text.replace(CONTROL_SEQUENCE, '‹');
}

/** At most `most` characters, never half a character, with an ellipsis where something is missing. */
export function cut(text: string, most: number): string {
  if (text.length <= most) return text;
  const room = Math.max(0, most - 1);
  const splitsPair = /[\ud800-\udbff]/.test(text[room - 1] ?? '');
  return `${text.slice(0, splitsPair ? room - 1 : room)}…`;
}
