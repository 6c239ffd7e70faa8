import { CsvError, parse } from 'csv-parse/sync';
import type { BookProblem } from './book.ts';

/** One row of a table by column name. A blank cell is absent: it means "not known", never zero. */
export interface TableRow {
  /** Line in the file, counted from 1. */
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export interface Table {
  readonly rows: readonly TableRow[];
  readonly problems: readonly BookProblem[];
}

export interface TableColumns {
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

interface ParsedRow {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/**
 * Reads the text of a CSV table whose first row names the columns, in any order.
 * A row that cannot be read is a problem and the others are kept; nothing is thrown.
 *
 * @example
 * readTable('id,name\noats,Oats\n', 'foods.csv', { required: ['id'], optional: ['name'] }).rows
 * // [{ line: 2, cells: { id: 'oats', name: 'Oats' } }]
 */
export function readTable(text: string, file: string, columns: TableColumns): Table {
  const problems: BookProblem[] = [];
  const parsed = parseRows(text, file, problems);
  const header = parsed[0]?.record.map((name) => name.trim());
  if (header === undefined) {
    if (problems.length === 0) problems.push(noHeader(file, columns));
    return { rows: [], problems };
  }
  problems.push(...headerProblems(header, file, columns));
  if (columns.required.some((name) => !header.includes(name))) return { rows: [], problems };
  const rows = parsed.slice(1).flatMap(({ record, info }) => {
    if (record.length === header.length) return [{ line: info.lines, cells: cellsOf(header, record) }];
    problems.push({
      file,
      line: info.lines,
      message: `This row has ${record.length} cells where the header has ${header.length}.`,
      hint: 'Write one cell per column; a text with a comma in it goes between double quotes.',
    });
    return [];
  });
  return { rows, problems };
}

const parsedRows = (text: string): readonly ParsedRow[] =>
  parse(text, {
    bom: true,
    info: true,
    skip_empty_lines: true,
    relax_column_count: true,
  }) as unknown as ParsedRow[];

function parseRows(text: string, file: string, problems: BookProblem[]): readonly ParsedRow[] {
  try {
    return parsedRows(text);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return lineByLine(text, file, problems);
  }
}

/** One quote left open would swallow every line below it: read so, it costs its own line only. */
function lineByLine(text: string, file: string, problems: BookProblem[]): readonly ParsedRow[] {
  return text.split(/\r\n|\n|\r/).flatMap((written, at): readonly ParsedRow[] => {
    const line = at + 1;
    try {
      return parsedRows(written).map(({ record }) => ({ record, info: { lines: line } }));
    } catch (error) {
      if (!(error instanceof CsvError)) throw error;
      problems.push({
        file,
        line,
        message: 'This line cannot be read: a double quote is open or stands inside a cell.',
        hint: 'Save the sheet as comma-separated text in UTF-8; a double quote inside a cell is written twice.',
      });
      return [];
    }
  });
}

function cellsOf(header: readonly string[], record: readonly string[]): Record<string, string> {
  const cells: Record<string, string> = {};
  header.forEach((name, index) => {
    const cell = record[index]?.trim() ?? '';
    if (cell !== '') cells[name] = cell;
  });
  return cells;
}

function headerProblems(header: readonly string[], file: string, columns: TableColumns): BookProblem[] {
  const known = [...columns.required, ...columns.optional];
  const missing = columns.required.filter((name) => !header.includes(name));
  const strange = header.filter((name) => !known.includes(name));
  const twice = header.filter((name, index) => header.indexOf(name) !== index);
  const accepted = `The columns are: ${known.join(', ')}.`;
  return [
    ...missing.map((name) => ({
      file,
      line: 1,
      field: name,
      message: `The column ${name} is missing, so no row of this file can be used.`,
      hint: accepted,
    })),
    ...strange.map((name) => ({
      file,
      line: 1,
      field: name,
      message: `There is no column called "${name}"; what stands in it is not read.`,
      hint: accepted,
    })),
    ...twice.map((name) => ({
      file,
      line: 1,
      field: name,
      message: `The column ${name} stands in the header twice; the last one with a value is read.`,
      hint: 'Keep one of the two.',
    })),
  ];
}

function noHeader(file: string, columns: TableColumns): BookProblem {
  return {
    file,
    message: 'The file is empty.',
    hint: `The first row names the columns: ${columns.required.join(', ')}, …`,
  };
}
