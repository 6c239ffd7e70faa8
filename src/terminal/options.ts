import { parseArgs } from 'node:util';
import type { PersonRole } from '../chat/request.ts';
import { Problem } from '../nutrition/problem.ts';

const ROLES = ['staff', 'intern', 'athlete', 'guest'] as const satisfies readonly PersonRole[];

const OPTIONS = {
  as: { type: 'string' },
  who: { type: 'string' },
  now: { type: 'string' },
  db: { type: 'string' },
  kitchen: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

export const USAGE = `Usage:
  npm start                          talk with the demo kitchen
  npm start -- "40 oat bars"         one request, one answer
  npm run --silent ask               one request a line on stdin, plain answers
  npm run --silent ask -- --json     the same, one JSON object a line
  npm start -- backup FILE           a copy of the kitchen's memory (SQLite), taken while it is in use
Options:
  --as staff|intern|athlete|guest    who is asking (staff)
  --who CODE                         the asker's code, such as WP-07
  --now WHEN                         the time to answer for: 2026-10-30T14:00 in the kitchen's zone, or with Z or an offset
  --db FILE                          where the kitchen's memory is kept
  --kitchen DIR                      a folder with your own recipes, on top of the built-in one
  --help                             this text`;

/** What the command line asks for. */
export interface Options {
  readonly mode: 'talk' | 'once' | 'lines' | 'backup' | 'usage';
  /** The request of mode `once`; the file of mode `backup`. */
  readonly text: string;
  readonly json: boolean;
  readonly role: PersonRole;
  readonly who: string;
  readonly now?: string;
  readonly db?: string;
  readonly kitchen?: string;
}

/**
 * Reads the command line. Text that merely begins with a dash ("-3 bars") is a request, not an option.
 * @throws Problem `bad_option` that names the options there are.
 */
export function readOptions(argv: readonly string[]): Options {
  const { values, positionals } = parse(argv.map((arg) => (isText(arg) ? ` ${arg}` : arg)));
  const role = ROLES.find((known) => known === (values.as ?? 'staff'));
  if (!role) throw bad(`--as takes ${ROLES.join(', ')}, not "${values.as}".`);
  for (const name of ['who', 'now', 'db', 'kitchen'] as const) {
    if (values[name]?.trim() === '') throw bad(`--${name} needs a value.`);
  }
  const lines = positionals[0] === 'ask';
  if (lines && positionals.length > 1) throw bad('"ask" reads its requests from stdin, one a line.');
  if (values.json && !lines) throw bad('--json goes with "ask": npm run --silent ask -- --json');
  const backsUp = positionals[0] === 'backup' && positionals.length < 3;
  if (backsUp && !positionals[1]?.trim())
    throw bad('"backup" needs a file: npm start -- backup kitchen-copy.db');
  const text = backsUp ? (positionals[1] ?? '') : positionals.join(' ').trim();
  const mode = values.help
    ? 'usage'
    : backsUp
      ? 'backup'
      : lines
        ? 'lines'
        : positionals.length > 0
          ? 'once'
          : 'talk';
  return {
    mode,
    text,
    json: values.json ?? false,
    role,
    who: values.who ?? role,
    ...(values.now ? { now: values.now } : {}),
    ...(values.db ? { db: values.db } : {}),
    ...(values.kitchen ? { kitchen: values.kitchen } : {}),
  };
}

/** A dash followed by a digit or a fraction, or a phrase that begins with one dash, is what somebody says. */
const isText = (arg: string): boolean => /^-[^-a-z]/i.test(arg) || /^-[^-].*\s/.test(arg);

function parse(args: string[]) {
  try {
    return parseArgs({ args, options: OPTIONS, allowPositionals: true, strict: true });
  } catch (error) {
    throw bad(error instanceof Error ? (error.message.split('. ')[0] ?? '') : String(error));
  }
}

function bad(message: string): Problem {
  const names = Object.keys(OPTIONS).map((name) => `--${name}`);
  return new Problem(
    'bad_option',
    message,
    `The options are ${names.join(', ')}. "npm start -- --help" explains them.`,
  );
}
