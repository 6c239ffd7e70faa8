import type { TableColumn } from './answer.ts';
import { displayWidth } from './display-width.ts';
import { wrap } from './wrap.ts';

const GAP = '  ';
/** A text column narrower than this is harder to read than rows put under each other. */
const NARROWEST = 14;

type Rows = readonly (readonly string[])[];

/** A table as lines of at most `width` columns: side by side where it fits, else one row under another. */
export function tableLines(columns: readonly TableColumn[], rows: Rows, width: number): string[] {
  const widths = columns.map((column, at) =>
    Math.max(displayWidth(column.name), ...rows.map((row) => displayWidth(row[at] ?? ''))),
  );
  const excess = widths.reduce((sum, w) => sum + w, GAP.length * (widths.length - 1)) - width;
  if (excess > 0) {
    const widest = columns.reduce((best, column, at) => {
      const wider = column.align === 'left' && (widths[at] ?? 0) > (widths[best] ?? 0);
      return wider || columns[best]?.align !== 'left' ? at : best;
    }, 0);
    const room = (widths[widest] ?? 0) - excess;
    if (columns[widest]?.align !== 'left' || room < NARROWEST) return stacked(columns, rows, width);
    widths[widest] = room;
  }
  const header = columns.map((column) => column.name);
  const rule = widths.map((w) => '-'.repeat(w)).join(GAP);
  return [
    ...rowLines(header, columns, widths),
    rule,
    ...rows.flatMap((row) => rowLines(row, columns, widths)),
  ];
}

function rowLines(
  row: readonly string[],
  columns: readonly TableColumn[],
  widths: readonly number[],
): string[] {
  const cells = columns.map((_, at) => wrap(row[at] ?? '', widths[at] ?? 0));
  const height = Math.max(...cells.map((cell) => cell.length));
  return Array.from({ length: height }, (_, line) =>
    cells
      .map((cell, at) => pad(cell[line] ?? '', widths[at] ?? 0, columns[at]?.align ?? 'left'))
      .join(GAP)
      .trimEnd(),
  );
}

function pad(text: string, width: number, align: TableColumn['align']): string {
  const space = ' '.repeat(Math.max(0, width - displayWidth(text)));
  return align === 'right' ? space + text : text + space;
}

/** Each row becomes its first cell and, under it, the others with their column's name. */
function stacked(columns: readonly TableColumn[], rows: Rows, width: number): string[] {
  return rows.flatMap((row) =>
    columns.flatMap((column, at) => {
      const cell = row[at] ?? '';
      if (at === 0) return wrap(cell, width, '  ');
      return cell === '' ? [] : wrap(`  ${column.name}: ${cell}`, width, '    ');
    }),
  );
}
