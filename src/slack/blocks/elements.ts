import type { types } from '@slack/bolt';
import { harmless } from '../../chat/wrap.ts';
import { LIMITS } from '../limits.ts';
import { cut, inert } from '../text.ts';

/** A text element as written: no markup is read in it, whoever wrote the words. */
export function richText(
  text: string,
  style: { bold?: true } = {},
): types.RichTextSection['elements'][number] {
  const shown = cut(inert(harmless(text)), LIMITS.textElement);
  return { type: 'text', text: shown === '' ? ' ' : shown, ...(style.bold ? { style } : {}) };
}

export const line = (...elements: types.RichTextSection['elements']): types.RichTextSection => ({
  type: 'rich_text_section',
  elements,
});

export const richBlock = (...elements: types.RichTextBlockElement[]): types.KnownBlock => ({
  type: 'rich_text',
  elements,
});

/** The first line of an answer: a header where it fits, else bold text. */
export function titleBlock(title: string): types.KnownBlock {
  const shown = inert(harmless(title)).replaceAll('\n', ' ').trim();
  if (shown === '' || shown.length > LIMITS.header) return richBlock(line(richText(title, { bold: true })));
  return { type: 'header', text: { type: 'plain_text', text: shown, emoji: false } };
}

/** What a block costs against the budget of a message. */
export const costOf = (block: types.KnownBlock): number => JSON.stringify(block).length + 1;
