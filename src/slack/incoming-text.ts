const REFERENCE = /<([^<>]*)>/g;

/**
 * What a person typed, as the chat reads it: the mention of the bot gone, links and references as their words, entities
 * back to characters, a phone's curly quotes and wide spaces plain.
 * @example incomingText('<@UBOT> 40 bars &amp; bites', 'UBOT') // '40 bars & bites'
 */
export function incomingText(text: string, botUserId?: string): string {
  return text
    .replace(REFERENCE, (_, inner: string) => referenceText(inner, botUserId))
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/[\u201c\u201d]/g, '"')
    .replace(/[\u00a0\u2007\u202f]/g, ' ')
    .trim();
}

/** A person is kept as an id, never as the name Slack sends beside it. */
function referenceText(inner: string, botUserId?: string): string {
  const [target = '', label = ''] = inner.split('|', 2);
  if (target.startsWith('@')) return target === `@${botUserId}` ? ' ' : target;
  if (target.startsWith('#')) return label ? `#${label}` : target;
  if (target.startsWith('!')) return label || `@${target.slice(1)}`;
  return label || target;
}
