import type { types } from '@slack/bolt';
import type { Section } from '../../chat/answer.ts';
import { tableLines } from '../../chat/text-table.ts';
import { harmless } from '../../chat/wrap.ts';
import { LIMITS } from '../limits.ts';
import { cut, inert } from '../text.ts';
import { costOf, line, richBlock, richText } from './elements.ts';

/** A section with only its first `count` items, and how many it has. */
interface Sliceable {
  readonly total: number;
  draw(count: number): types.KnownBlock;
}

/** A section as one block of at most `room` characters of JSON; what does not fit is counted. `undefined`: nothing fits. */
export function sectionBlock(section: Section, room: number): types.KnownBlock | undefined {
  const { total, draw } = sliceable(section);
  const whole = draw(total);
  if (costOf(whole) <= room) return whole;
  let fits = 0;
  let over = total;
  while (over - fits > 1) {
    const middle = Math.floor((fits + over) / 2);
    if (costOf(draw(middle)) <= room) fits = middle;
    else over = middle;
  }
  return fits > 0 ? draw(fits) : undefined;
}

function sliceable(section: Section): Sliceable {
  if (section.kind === 'text') return textSlices(section.text);
  if (section.kind === 'table') return tableSlices(section);
  return listSlices(section);
}

function textSlices(text: string): Sliceable {
  const shown = harmless(text);
  const total = Math.min(shown.length, LIMITS.textElement);
  return { total, draw: (count) => richBlock(line(richText(cut(shown, count)))) };
}

function listSlices(section: Extract<Section, { kind: 'list' | 'steps' }>): Sliceable {
  const style = section.kind === 'steps' ? 'ordered' : 'bullet';
  return {
    total: section.items.length,
    draw(count) {
      const items = section.items.slice(0, count).map((item) => line(richText(item)));
      const list: types.RichTextBlockElement[] =
        count > 0 ? [{ type: 'rich_text_list', style, elements: items }] : [];
      return richBlock(...heading(section.heading), ...list, ...more(section.items.length - count));
    },
  };
}

function tableSlices(section: Extract<Section, { kind: 'table' }>): Sliceable {
  const rows = section.rows.map((row) => row.map((cell) => harmless(cell).replaceAll('\n', ' ')));
  return {
    total: rows.length,
    draw(count) {
      const lines = tableLines(section.columns, rows.slice(0, count), LIMITS.phoneColumns);
      return richBlock(
        ...heading(section.heading),
        {
          type: 'rich_text_preformatted',
          elements: [{ type: 'text', text: inert(lines.join('\n')) || ' ' }],
        },
        ...more(rows.length - count),
      );
    },
  };
}

const heading = (text: string | undefined): types.RichTextBlockElement[] =>
  text ? [line(richText(text, { bold: true }))] : [];

const more = (count: number): types.RichTextBlockElement[] =>
  count > 0 ? [line(richText(`and ${count} more; ask for fewer at once to see them`))] : [];
