import type { types } from '@slack/bolt';
import type { Section } from '../../chat/answer.ts';
import { LIMITS } from '../limits.ts';
import { boldText, costOf, line, richBlock, richText } from './elements.ts';
import { drawableTable, isNarrow, tableElement } from './table.ts';

/** A section that can be drawn with only its first `count` parts: items, rows or characters. */
interface Sliceable {
  /** Characters of each part. */
  readonly lengths: readonly number[];
  draw(count: number): types.KnownBlock;
}

/** A section as one block of at most `room` characters of JSON, counting what does not fit; `undefined`: nothing fits. */
export function sectionBlock(section: Section, room: number): types.KnownBlock | undefined {
  const { lengths, draw } = sliceable(section);
  const most = leading(lengths, room);
  if (most === lengths.length) {
    const whole = draw(most);
    if (costOf(whole) <= room) return whole;
  }
  let fits = 0;
  let over = most + 1;
  while (over - fits > 1) {
    const middle = Math.floor((fits + over) / 2);
    if (costOf(draw(middle)) <= room) fits = middle;
    else over = middle;
  }
  return fits > 0 ? draw(fits) : undefined;
}

/** How many of the first parts hold at most `most` characters together: drawing more would be for nothing. */
export function leading(lengths: readonly number[], most: number): number {
  let sum = 0;
  const over = lengths.findIndex((length) => {
    sum += length;
    return sum > most;
  });
  return over < 0 ? lengths.length : over;
}

/** Whether there is anything to draw; Slack refuses an empty block. */
export function isDrawable(section: Section): boolean {
  if (section.kind === 'text') return section.text.trim() !== '';
  return Boolean(section.heading?.trim()) || partsOf(section).length > 0;
}

const partsOf = (section: Exclude<Section, { kind: 'text' }>): readonly unknown[] =>
  section.kind === 'table' ? section.rows : section.items;

function sliceable(section: Section): Sliceable {
  if (section.kind === 'text') return textSlices(section.text);
  if (section.kind === 'table') return tableSlices(section);
  return listSlices(section);
}

function textSlices(text: string): Sliceable {
  return {
    lengths: Array(Math.min(text.length, LIMITS.textElement)).fill(1),
    draw: (count) => richBlock(line(richText(text, count))),
  };
}

function listSlices(section: Extract<Section, { kind: 'list' | 'steps' }>): Sliceable {
  const style: 'ordered' | 'bullet' = section.kind === 'steps' ? 'ordered' : 'bullet';
  const items = section.items.map((item) => line(richText(item, LIMITS.item)));
  return {
    lengths: section.items.map((item) => item.length),
    draw(count) {
      const elements = items.slice(0, count);
      const list = count > 0 ? [{ type: 'rich_text_list' as const, style, elements }] : [];
      return richBlock(...heading(section.heading), ...list, ...more(items.length - count));
    },
  };
}

function tableSlices(section: Extract<Section, { kind: 'table' }>): Sliceable {
  const table = drawableTable(section);
  const { rows } = table;
  const isSideBySide = isNarrow(table);
  return {
    lengths: rows.map((row) => row.join('').length),
    draw(count) {
      const drawn = { ...table, rows: rows.slice(0, count) };
      const elements =
        count > 0 || rows.length === 0 ? [tableElement(drawn, isSideBySide || count === 0)] : [];
      return richBlock(...heading(section.heading), ...elements, ...more(rows.length - count));
    },
  };
}

const heading = (text: string | undefined): types.RichTextBlockElement[] =>
  text?.trim() ? [line(boldText(text))] : [];

const more = (count: number): types.RichTextBlockElement[] =>
  count > 0 ? [line(richText(`and ${count} more; ask for fewer at once to see them`))] : [];
