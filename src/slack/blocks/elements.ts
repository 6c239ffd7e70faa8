import type { types } from '@slack/bolt';
import { LIMITS } from '../limits.ts';
import { cut, shown } from '../text.ts';

/** A text element as written: no markup is read in it, whoever wrote the words. Slack refuses an empty one. */
export function richText(
  text: string,
  most: number = LIMITS.textElement,
  style?: { bold: true },
): types.RichTextText {
  return { type: 'text', text: cut(shown(text), most) || ' ', ...(style ? { style } : {}) };
}

export const boldText = (text: string, most: number = LIMITS.item): types.RichTextText =>
  richText(text, most, { bold: true });

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
  const text = shown(title).replaceAll('\n', ' ').trim();
  if (text === '' || text.length > LIMITS.header) return richBlock(line(boldText(text, LIMITS.title)));
  return { type: 'header', text: { type: 'plain_text', text, emoji: false } };
}

/** What a block costs against the budget of a message. */
export function costOf(block: types.KnownBlock): number {
  const known = costs.get(block);
  if (known !== undefined) return known;
  const cost = JSON.stringify(block).length + 1;
  costs.set(block, cost);
  return cost;
}

/** A block is weighed for its own room and again for the message's. */
const costs = new WeakMap<types.KnownBlock, number>();
