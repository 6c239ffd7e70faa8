import { VULGAR_FRACTIONS } from '../../nutrition/quantity/number-words.ts';
import { EMOJI_WORDS } from './vocabulary/emoji.ts';

/** Longest message that is read: as much as the chat takes, so that nothing it takes is left unread. */
export const LONGEST_MESSAGE = 4_000;

const PLAIN = /^[\x20-\x25\x27-\x3b\x3d-\x7e]*$/;

/**
 * The message as the grammar wants it: one line of plain characters. Slack's markup is undone, mentions go,
 * emoji become words or nothing, invisible and control characters go. Case stays, since T and t differ.
 * @example normalize('½ cup <@U12> “oats”') // '1/2 cup "oats"'
 */
export function normalize(text: string): string {
  const bounded = text.length > LONGEST_MESSAGE ? text.slice(0, LONGEST_MESSAGE) : text;
  if (PLAIN.test(bounded)) return markup(bounded);
  const unescaped = bounded
    .replace(/<[@#!][^>]*>/g, ' ')
    .replace(/<(https?:[^|>\s]+)(?:\|[^>]*)?>/g, '$1')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');
  return markup(
    unescaped
      .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${VULGAR_FRACTIONS.get(sign) ?? sign} `)
      .replace(/[\u2018\u2019\u201b\u2032\u00b4`]/g, "'")
      .replace(/[\u201c\u201d\u2033]/g, '"')
      .replace(/[\u2010-\u2015\u2212]/g, '-')
      .replace(/[\u00b0\u00ba]/g, ' degrees ')
      .replace(/\u00d7/g, 'x')
      .replace(/\u2192|\u27a1/g, ' to ')
      .replace(/\p{Extended_Pictographic}/gu, (sign) => ` ${EMOJI_WORDS[sign] ?? ''} `)
      .normalize('NFKD')
      .replace(/\u200b/g, ' ')
      .replace(/\p{M}|[\u00ad\u200c-\u200f\u202a-\u202e\u2060-\u206f\ufeff]/gu, '')
      .replace(/\u2044/g, '/')
      .replace(/[\p{Cc}\p{Cs}\p{Z}]+/gu, ' '),
  ).trim();
}

/** Slack's bold, strike, code marks and `:shortcodes:`; "w/" and "w/o", which signs would tear apart. */
function markup(text: string): string {
  if (!/[*~`_:$/]/.test(text)) return text;
  return text
    .replace(/\${2,}/g, ' cost ')
    .replace(/\bw\/(o\b)?/gi, (_, out?: string) => (out ? 'without ' : 'with '))
    .replace(/[*~`]+/g, ' ')
    .replace(/:([a-z][a-z_]{2,}):/g, (_, name: string) => ` ${name.replace(/_/g, ' ')} `)
    .replace(/(^|\s)_+(?=\S)|(\S)_+(?=\s|$)/g, '$1$2');
}
