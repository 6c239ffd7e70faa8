import { expect, test } from 'vitest';
import { bookProblemLines } from '../../src/terminal/book-problems.ts';

const problem = {
  file: 'recipes/cards/x.yaml',
  line: 12,
  field: 'yield',
  message: 'The yield is missing.',
  hint: 'Write yield: 12 bars.',
};

test('a mistake in the folder is told with file, line, field and what to write', () => {
  expect(bookProblemLines([problem])).toEqual([
    'recipes/cards/x.yaml line 12, field yield: The yield is missing. Write yield: 12 bars.',
  ]);
});

test('what is not known about its place is left out', () => {
  const { file, message, hint } = problem;
  expect(bookProblemLines([{ file, message, hint }])).toEqual([
    'recipes/cards/x.yaml: The yield is missing. Write yield: 12 bars.',
  ]);
});

test('a folder full of mistakes does not fill the screen, and none is hidden', () => {
  const lines = bookProblemLines(Array.from({ length: 100 }, () => problem));
  expect(lines).toHaveLength(31);
  expect(lines.at(-1)).toContain('70 more');
});
