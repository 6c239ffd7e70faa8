import { NEEDS, type Need } from '../../nutrition/allergens.ts';
import { readTable, type TableRow } from '../../nutrition/csv-table.ts';
import { Problem } from '../../nutrition/problem.ts';
import { isPersonCode, pieceProblem } from './codes.ts';
import { MOST_ROWS } from './limits.ts';
import type { PersonNeeds } from './roster.ts';

const COLUMNS = {
  required: ['code'],
  optional: [
    'member',
    'team',
    'allergies',
    'coeliac',
    'vegan',
    'vegetarian',
    'lactose',
    'avoids',
    'likes',
    'pieces',
  ],
} as const;

/** What is wrong on one line, for whoever keeps the file. */
export interface RosterProblem {
  readonly line?: number;
  readonly field?: string;
  readonly message: string;
  readonly hint: string;
}

/** How words become needs, foods and recipes; a kitchen knows no grammar. */
export interface RosterWords {
  /** Needs named in a cell, what else is avoided, and words of that which this kitchen has no food for. */
  avoided(cell: string): {
    readonly avoid: readonly Need[];
    readonly foods: readonly string[];
    readonly unknown: readonly string[];
    /** Misspelled words that were taken for a need, with the words of the need. */
    readonly readAs: readonly (readonly [written: string, need: string])[];
  };
  /** The recipe a name means; undefined for none. */
  recipe(name: string): string | undefined;
}

export interface RosterRead {
  readonly people: readonly PersonNeeds[];
  readonly problems: readonly RosterProblem[];
}

/**
 * Reads the text of a roster table. A line that cannot be used is a problem and the others are kept; where a need is
 * in doubt the person is kept with it, for leaving it out is what would hurt.
 * @throws Problem `bad_file` for bytes that are no text or too many rows.
 */
export function readRoster(bytes: Uint8Array, words: RosterWords, nowMs: number): RosterRead {
  const { rows, problems: ofTable } = readTable(textOf(bytes), 'roster', COLUMNS);
  if (rows.length > MOST_ROWS)
    throw new Problem(
      'bad_file',
      `This roster has ${rows.length} lines; at most ${MOST_ROWS} are read.`,
      'Give one line a person, and only the people the kitchen feeds.',
    );
  const problems: RosterProblem[] = ofTable.map(({ file: _file, ...rest }) => rest);
  const people = new Map<string, { person: PersonNeeds; line: number }>();
  for (const row of rows) {
    const person = personOf(row, words, nowMs, problems);
    if (!person) continue;
    const before = people.get(person.code);
    if (before && !isSame(before.person, person)) problems.push(twice(person.code, before.line, row.line));
    people.set(person.code, {
      person: before ? bothOf(before.person, person) : person,
      line: before?.line ?? row.line,
    });
  }
  problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  return { people: [...people.values()].map(({ person }) => person), problems };
}

function textOf(bytes: Uint8Array): string {
  try {
    if (bytes.includes(0)) throw new TypeError('binary');
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Problem(
      'bad_file',
      'This is not a text file.',
      'Save the sheet as comma-separated text in UTF-8, with the ending .csv.',
    );
  }
}

function personOf(
  { line, cells }: TableRow,
  words: RosterWords,
  nowMs: number,
  problems: RosterProblem[],
): PersonNeeds | undefined {
  const tell = (field: string, message: string, hint: string) =>
    problems.push({ line, field, message, hint });
  const code = (cells.code ?? '').toUpperCase();
  if (!isPersonCode(code)) {
    tell(
      'code',
      code === '' ? 'No code, so the line is left out.' : 'This is not a code, so the line is left out.',
      'Write a code with a number in it, such as WP-07; never a name.',
    );
    return undefined;
  }
  const listed = words.avoided([cells.allergies, cells.avoids].filter(Boolean).join('; '));
  for (const word of listed.unknown)
    tell(
      [cells.allergies ?? ''].some((cell) => cell.toLowerCase().includes(word)) ? 'allergies' : 'avoids',
      `"${word}" is no need and no food known here. It is kept, and every plan says it could not be checked.`,
      'Write a need (peanut, nut, milk, egg, wheat, gluten, soy, sesame, fish, shellfish) or a food by its name.',
    );
  for (const [written, need] of listed.readAs)
    tell('allergies', `"${written}" is read as ${need}.`, 'Put the spelling right.');
  const ticked = tickedNeeds(cells, tell);
  const avoid = new Set<Need>([...listed.avoid, ...ticked]);
  if (no(cells.vegetarian) && avoid.has('animal'))
    tell(
      'vegetarian',
      'Vegan and not vegetarian contradict each other; vegan is kept.',
      'Write yes, or leave it empty.',
    );
  const pieces = piecesOf(cells.pieces, tell);
  return {
    code,
    ...(cells.member === undefined ? {} : { member: cells.member }),
    ...(cells.team === undefined ? {} : { team: cells.team }),
    avoid: NEEDS.filter((need) => avoid.has(need)),
    foods: listed.foods,
    likes: likesOf(cells.likes, words, tell),
    ...(pieces === undefined ? {} : { pieces }),
    toldBy: 'file',
    updatedMs: nowMs,
  };
}

type Tell = (field: string, message: string, hint: string) => void;

const TICKS: readonly (readonly [column: string, need: Need])[] = [
  ['coeliac', 'gluten'],
  ['vegan', 'animal'],
  ['vegetarian', 'meat'],
  ['lactose', 'lactose'],
];
const yes = (cell: string | undefined): boolean => /^(?:y|yes|x|true|1)$/i.test(cell ?? '');
const no = (cell: string | undefined): boolean => /^(?:n|no|false|0|-)$/i.test(cell ?? '');

function tickedNeeds(cells: TableRow['cells'], tell: Tell): Need[] {
  return TICKS.flatMap(([column, need]) => {
    const cell = cells[column];
    if (cell === undefined || no(cell)) return [];
    if (!yes(cell))
      tell(column, `"${cell}" is neither yes nor no. It is taken as yes until it is.`, 'Write yes or no.');
    return [need];
  });
}

function piecesOf(cell: string | undefined, tell: Tell): number | undefined {
  if (cell === undefined) return undefined;
  const problem = pieceProblem(Number(cell));
  if (problem === undefined) return Number(cell);
  tell('pieces', `"${cell}" pieces: ${problem} The kitchen's usual number is taken.`, 'Write 1, 2, or 0.5.');
  return undefined;
}

const likesOf = (cell: string | undefined, words: RosterWords, tell: Tell): string[] =>
  (cell ?? '').split(/[;/]/).flatMap((name) => {
    if (name.trim() === '') return [];
    const id = words.recipe(name.trim());
    if (id === undefined)
      tell('likes', `"${name.trim()}" is no recipe here and is left out.`, 'Type "recipes" for the list.');
    return id ?? [];
  });

const isSame = (a: PersonNeeds, b: PersonNeeds): boolean =>
  JSON.stringify([a.avoid, a.foods, a.likes, a.pieces]) ===
  JSON.stringify([b.avoid, b.foods, b.likes, b.pieces]);

/** What either of two says is avoided is avoided. */
export function bothOf(a: PersonNeeds, b: PersonNeeds): PersonNeeds {
  const avoid = new Set([...a.avoid, ...b.avoid]);
  return {
    ...a,
    ...b,
    avoid: NEEDS.filter((need) => avoid.has(need)),
    foods: [...new Set([...a.foods, ...b.foods])],
    likes: [...new Set([...a.likes, ...b.likes])],
  };
}

const twice = (code: string, first: number, line: number): RosterProblem => ({
  line,
  field: 'code',
  message: `${code} stands on line ${first} too, with other needs. All that either line avoids is kept.`,
  hint: 'Keep one line a person.',
});
