import { harmless } from '../chat/wrap.ts';

/** Where Slack would read a command to page somebody: `<!channel>`, `<@U…>`, `<#C…>`. */
const CONTROL_SEQUENCE = /<(?=[!@#])/g;
/** Half of a character outside the basic plane: not text any more. */
const HALF_CHARACTER = /\p{Surrogate}/gu;

/**
 * Text for the top-level `text` of a message: the three characters Slack reads as control are escaped, nothing else, and
 * the result holds at most `most` characters.
 * @example escaped('<!channel> & co', 100) // '&lt;!channel&gt; &amp; co'
 */
export function escaped(text: string, most: number): string {
  const plain = text.replace(HALF_CHARACTER, '\ufffd');
  const whole = plain.replace(/[&<>]/g, escapedCharacter);
  if (whole.length <= most) return whole;
  let kept = '';
  for (const character of plain) {
    const part = escapedCharacter(character);
    if (kept.length + part.length >= most) break;
    kept += part;
  }
  return `${kept}…`;
}

function escapedCharacter(character: string): string {
  if (character === '&') return '&amp;';
  if (character === '<') return '&lt;';
  return character === '>' ? '&gt;' : character;
}

/**
 * Text for `plain_text` and rich text, which Slack shows as written: nothing that steers a screen, and although those page
 * nobody, control sequences are broken all the same, so that a copy of the text elsewhere cannot.
 * @example shown('oats\u0000 <!here>') // 'oats ‹!here>'
 */
export function shown(text: string): string {
  return harmless(text).replace(HALF_CHARACTER, '\ufffd').replace(CONTROL_SEQUENCE, '‹');
}

/** At most `most` characters, never half a character, with an ellipsis where something is missing. */
export function cut(text: string, most: number): string {
  if (text.length <= most) return text;
  const room = Math.max(0, most - 1);
  const splitsPair = /[\ud800-\udbff]/.test(text[room - 1] ?? '');
  return `${text.slice(0, splitsPair ? room - 1 : room)}…`;
}
