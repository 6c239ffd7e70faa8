import { describe, expect, test } from 'vitest';
import { Problem } from '../../src/nutrition/problem.ts';
import { readOptions } from '../../src/terminal/options.ts';

const refusal = (argv: string[]): Problem => {
  try {
    readOptions(argv);
  } catch (error) {
    if (error instanceof Problem) return error;
  }
  throw new Error(`accepted ${argv.join(' ')}`);
};

describe('the command line', () => {
  test('without arguments opens a conversation as staff', () => {
    expect(readOptions([])).toMatchObject({ mode: 'talk', role: 'staff' });
  });

  test('joins the words of a request nobody quoted', () => {
    expect(readOptions(['40', 'oat', 'bars'])).toMatchObject({ mode: 'once', text: '40 oat bars' });
  });

  test.each([['-3 bars'], ['-3'], ['-½ cup'], ['-x bars please']])('takes "%s" for a request', (text) => {
    expect(readOptions([text])).toMatchObject({ mode: 'once', text });
  });

  test('an empty request is still a request', () => {
    expect(readOptions([''])).toMatchObject({ mode: 'once', text: '' });
  });

  test('reads every option', () => {
    const argv = 'ask --json --as intern --who WP-07 --now 2026-10-30T14:00 --db k.db --kitchen ./mine'.split(
      ' ',
    );
    expect(readOptions(argv)).toEqual({
      mode: 'lines',
      text: 'ask',
      json: true,
      role: 'intern',
      who: 'WP-07',
      now: '2026-10-30T14:00',
      db: 'k.db',
      kitchen: './mine',
    });
  });

  test.each([
    [['--colour']],
    [['ask', '--jsno']],
    [['-z']],
    [['--as']],
    [['--as', 'coach']],
    [['--now', '']],
    [['--json', '40 bars']],
    [['ask', '40 bars']],
    [['--json=yes', 'ask']],
  ])('refuses %j and names the options there are', (argv) => {
    const problem = refusal(argv);
    expect(problem.code).toBe('bad_option');
    for (const name of ['--as', '--who', '--now', '--db', '--kitchen', '--json']) {
      expect(problem.hint).toContain(name);
    }
  });

  test('says which option it does not know', () => {
    expect(refusal(['--colour']).message).toContain('--colour');
    expect(refusal(['--as', 'coach']).message).toContain('coach');
  });
});
