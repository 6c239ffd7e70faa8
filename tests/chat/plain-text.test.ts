import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/chat/answer.ts';
import { displayWidth } from '../../src/chat/display-width.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import { harmless, wrap } from '../../src/chat/wrap.ts';

const amounts: Answer = {
  title: '40 oat bars: 4 mixes of 10 bars, 60 g each.',
  sections: [
    {
      kind: 'table',
      heading: 'One mix',
      columns: [
        { name: 'Ingredient', align: 'left' },
        { name: 'Amount', align: 'left' },
        { name: 'Grams', align: 'right' },
      ],
      rows: [
        ['Rolled oats, labelled gluten-free, not instant', '2 1/2 cups', '203'],
        ['Peanut butter', '1/3 cup', '85'],
      ],
    },
    { kind: 'steps', items: ['Mix until it comes together as a ball and no dry oats are left in the bowl.'] },
  ],
  cautions: ['Contains peanut and milk.'],
  next: [{ label: 'Nut-free', says: 'nut free?' }],
  audience: 'channel',
  data: {},
};

describe('an answer as plain text', () => {
  test('is read side by side at 80 columns', () => {
    expect(plainText(amounts, 80)).toBe(
      [
        '40 oat bars: 4 mixes of 10 bars, 60 g each.',
        '',
        'One mix',
        'Ingredient                                      Amount      Grams',
        '----------------------------------------------  ----------  -----',
        'Rolled oats, labelled gluten-free, not instant  2 1/2 cups    203',
        'Peanut butter                                   1/3 cup        85',
        '',
        '1. Mix until it comes together as a ball and no dry oats are left in the bowl.',
        '',
        'Caution: Contains peanut and milk.',
        '',
        'Ask next: "nut free?"',
      ].join('\n'),
    );
  });

  test('wraps the widest column at 40', () => {
    expect(plainText(amounts, 40).split('\n').slice(4, 10)).toEqual([
      'Ingredient             Amount      Grams',
      '---------------------  ----------  -----',
      'Rolled oats, labelled  2 1/2 cups    203',
      'gluten-free, not',
      'instant',
      'Peanut butter          1/3 cup        85',
    ]);
  });

  test('puts rows under each other where a table does not fit', () => {
    expect(plainText(amounts, 28)).toContain('Peanut butter\n  Amount: 1/3 cup\n  Grams: 85');
  });

  test('no line is wider than asked, at any width, in any script', () => {
    const cell = fc.string({
      unit: fc.constantFrom('a', 'é', ' ', '-', '燕', '麦', '🥜', '½', '\u0301', '\n', '\t'),
    });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cell, cell, cell), { maxLength: 5 }),
        fc.integer({ min: 20, max: 90 }),
        (rows, width) => {
          const columns = ['Food', 'Amount', 'Grams'].map((name) => ({ name, align: 'left' as const }));
          const answer: Answer = {
            ...amounts,
            title: rows[0]?.[0] ?? '',
            sections: [
              { kind: 'table', columns, rows },
              { kind: 'list', items: rows.flat() },
            ],
          };
          for (const line of plainText(answer, width).split('\n'))
            expect(displayWidth(line)).toBeLessThanOrEqual(width);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('nothing in it can steer the screen', () => {
    const hostile = '\u001b[2J\u009b31m\u202eevil\u2066\u0007\r\u0000';
    const text = plainText({
      ...amounts,
      title: hostile,
      cautions: [hostile],
      sections: [{ kind: 'list', items: [hostile] }],
    });
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  });
});

describe('columns', () => {
  test.each([
    ['oats', 4],
    ['½ cup', 5],
    ['café', 4],
    ['cafe\u0301', 4],
    ['燕麦', 4],
    ['🥜', 2],
    ['👩‍🍳', 2],
    ['🇺🇸', 2],
    ['', 0],
    ['\u200d', 0],
  ])('%j takes %i', (text, width) => {
    expect(displayWidth(text)).toBe(width);
  });
});

describe('wrapping', () => {
  test('breaks at spaces and keeps every word', () => {
    expect(wrap('one two three', 8)).toEqual(['one two', 'three']);
  });

  test('cuts a word that no line can hold', () => {
    expect(wrap('abcdefghij', 4)).toEqual(['abcd', 'efgh', 'ij']);
  });

  test('loses nothing but spaces', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 2, max: 40 }), (raw, width) => {
        const text = harmless(raw);
        const bare = (s: string) => s.replace(/\s/g, '');
        expect(bare(wrap(text, width).join(''))).toBe(bare(text));
      }),
      { numRuns: 500 },
    );
  });
});
