import type { types } from '@slack/bolt';
import type { Section } from '../../chat/answer.ts';
import { displayWidth } from '../../chat/display-width.ts';
import { tableLines } from '../../chat/text-table.ts';
import { LIMITS } from '../limits.ts';
import { cut, shown } from '../text.ts';
import { boldText, line, richText } from './elements.ts';

type Table = Extract<Section, { kind: 'table' }>;

const GAP = 2;

/** The table with every cell on one line and short enough to draw. */
export function drawableTable(table: Table): Table {
  const cell = (text: string) => cut(shown(text).replaceAll('\n', ' '), LIMITS.item);
  return {
    ...table,
    columns: table.columns.map((column) => ({ ...column, name: cell(column.name) })),
    rows: table.rows.map((row) => row.map(cell)),
  };
}

/** Rows side by side in monospaced columns where a phone shows them unbroken, else each row as a point of a list. */
export function tableElement({ columns, rows }: Table, isNarrow: boolean): types.RichTextBlockElement {
  if (isNarrow) {
    const text = tableLines(columns, rows, LIMITS.phoneColumns).join('\n') || ' ';
    return { type: 'rich_text_preformatted', elements: [{ type: 'text', text }] };
  }
  return {
    type: 'rich_text_list',
    style: 'bullet',
    elements: rows.map((row) => {
      const [first = '', ...others] = row;
      const named = others
        .map((cell, at) => (cell === '' ? '' : `${columns[at + 1]?.name ?? ''} ${cell}`.trim()))
        .filter((words) => words !== '');
      const rest = named.length > 0 ? [richText(`: ${named.join(' · ')}`, LIMITS.item)] : [];
      return line(boldText(first), ...rest);
    }),
  };
}

export function isNarrow({ columns, rows }: Table): boolean {
  const widths = columns.map((column, at) =>
    Math.max(displayWidth(column.name), ...rows.map((row) => displayWidth(row[at] ?? ''))),
  );
  return widths.reduce((sum, width) => sum + width + GAP, -GAP) <= LIMITS.phoneColumns;
}
