import { beforeAll, describe, expect, test } from 'vitest';
import { builtProgram, run } from '../helpers/program.ts';

interface Line {
  readonly request: string;
  readonly intent: string;
  readonly slots: Record<string, unknown>;
  readonly answer: { title: string; text: string; data: object; cautions: string[] } | null;
  readonly error?: { code: string; message: string; hint: string };
}

const ask = async (input: string | Uint8Array, options: string[] = []): Promise<Line[]> => {
  const { stdout, code } = await run(['ask', '--json', ...options], input);
  expect(code).toBe(0);
  return stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line);
};

beforeAll(builtProgram);

describe('ask --json', () => {
  test('answers every line with one object of the contract, in order', async () => {
    const lines = await ask('help\nrecipes\nxyzzy\n');
    expect(lines.map(({ request }) => request)).toEqual(['help', 'recipes', 'xyzzy']);
    for (const line of lines) {
      expect(Object.keys(line).sort()).toEqual(['answer', 'intent', 'request', 'slots']);
      expect(Object.keys(line.answer ?? {}).sort()).toEqual(['cautions', 'data', 'text', 'title']);
      expect(line.answer?.text.startsWith(line.answer.title.slice(0, 20))).toBe(true);
    }
  });

  test('a bad line is data and never stops the batch', async () => {
    const bad = Buffer.concat([
      Buffer.from('\n'),
      Buffer.from(`${'x'.repeat(10_240)}\n`),
      Buffer.from([0xff, 0xfe, 0x0a]),
      Buffer.from(
        '\u0007\u001b[31m\n\u202e\u200f\n<!channel>\n-3 bars\n1e9 bars\n0 bars\nNaN\n1/0 cup\n__proto__\n',
      ),
      Buffer.from('help'),
    ]);
    const lines = await ask(bad);
    expect(lines).toHaveLength(13);
    expect(lines[0]?.error?.code).toBe('empty_request');
    expect(lines[1]?.error?.code).toBe('too_long');
    expect(lines.at(-1)?.request).toBe('help');
    for (const { answer, error } of lines) {
      expect(answer === null).toBe(error !== undefined);
      if (error) expect(error.hint.length).toBeGreaterThan(5);
      expect(error?.code).not.toBe('internal');
    }
  });

  test('a line of 100 MB is bounded in memory and told to be shorter', async () => {
    const { stdout, code } = await run(['ask', '--json'], repeated('oat bars ', 100 * 1024 * 1024), [
      '--max-old-space-size=64',
    ]);
    const line = JSON.parse(stdout) as Line;
    expect(code).toBe(0);
    expect(line.error?.code).toBe('too_long');
    expect(line.request.length).toBeLessThan(70_000);
  });

  test('without --json the answers are paragraphs', async () => {
    const { stdout } = await run(['ask'], 'help\n');
    expect(stdout).toMatch(/^Ask as you would text a colleague\.\n/);
    expect(stdout).not.toContain('\u001b');
  });
});

describe('the program', () => {
  test('one request, one answer, exit 0', async () => {
    const { stdout, code } = await run(['help']);
    expect(code).toBe(0);
    expect(stdout).toContain('Ask as you would text a colleague.');
  });

  test('a request that cannot be answered says what to write, exit 1', async () => {
    const { stdout, code } = await run(['']);
    expect(code).toBe(1);
    expect(stdout).toContain('40 oat bars');
  });

  test.each([
    [['--colour'], '--json'],
    [['--now', 'soon', 'help'], '2026-10-30T14:00'],
    [['--kitchen', '/nowhere/at/all', 'help'], '/nowhere/at/all'],
  ])('%j: a clear message on stderr, exit 2', async (argv, says) => {
    const { stdout, stderr, code } = await run(argv);
    expect({ stdout, code }).toEqual({ stdout: '', code: 2 });
    expect(stderr).toContain(says);
    expect(stderr).not.toContain('    at ');
  });

  test('a conversation greets, answers and leaves at "quit"', async () => {
    const { stdout, code } = await run([], 'help\n\nquit\nhelp\n');
    expect(code).toBe(0);
    expect(stdout.match(/(?<!kitchen\. )Ask as you would text a colleague\./g)).toHaveLength(1);
    expect(stdout).toContain('Alder Point Herons');
  });

  test('a conversation ends with its input', async () => {
    expect((await run([], '')).code).toBe(0);
  });

  test('works when started from another folder', async () => {
    expect((await run(['recipes'], '', [], '/')).code).toBe(0);
  });
});

function* repeated(text: string, bytes: number): Generator<Uint8Array> {
  const chunk = Buffer.from(text.repeat(Math.ceil(65_536 / text.length)));
  for (let sent = 0; sent < bytes; sent += chunk.length) yield chunk;
}
