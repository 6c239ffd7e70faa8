import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer, Section } from '../../src/chat/answer.ts';
import { answerMessage, errorMessage } from '../../src/slack/blocks/message.ts';
import { faultsOf, textsOf } from './message-checks.ts';

const answer = (more: Partial<Answer> = {}): Answer => ({
  title: '40 oat bars: 2 mixes',
  sections: [],
  cautions: [],
  next: [],
  audience: 'channel',
  data: {},
  ...more,
});
const table = (rows: number, cell = 'x'): Section => ({
  kind: 'table',
  heading: 'Batches',
  columns: [
    { name: 'Batch', align: 'left' },
    { name: 'Pieces', align: 'right' },
  ],
  rows: Array.from({ length: rows }, (_, at) => [`${cell} ${at}`, String(at)]),
});
const words = (message: { blocks: object[] }): string =>
  textsOf(message.blocks)
    .map(({ text }) => text)
    .join('\n');

describe('an answer as blocks', () => {
  test('shows the title, the sections in order, the cautions and a button for each follow-up', () => {
    const { blocks } = answerMessage(
      answer({
        sections: [
          { kind: 'list', heading: 'Weigh', items: ['rolled oats 400 g', 'milk 240 g'] },
          { kind: 'steps', items: ['Mix', 'Press'] },
          table(2),
        ],
        cautions: ['Not checked for cross-contact.'],
        next: [{ label: 'In grams', says: 'in grams' }],
      }),
      'next|channel|',
    );
    expect(blocks.map((block) => block.type)).toEqual([
      'header',
      'rich_text',
      'rich_text',
      'rich_text',
      'rich_text',
      'actions',
    ]);
    expect(blocks.at(-1)).toMatchObject({
      block_id: 'next|channel|',
      elements: [{ action_id: 'next_step_1', value: 'in grams', text: { text: 'In grams' } }],
    });
    expect(words({ blocks })).toContain('Caution: Not checked for cross-contact.');
  });

  test.each<[string, Answer]>([
    ['500 rows', answer({ sections: [table(500)] })],
    ['300 rows with names of 5,000 characters', answer({ sections: [table(300, 'n'.repeat(5000))] })],
    [
      '40 ingredients of 400 characters',
      answer({ sections: [{ kind: 'list', items: Array(40).fill('o'.repeat(400)) }] }),
    ],
    ['200 sections', answer({ sections: Array.from({ length: 200 }, () => table(1)) })],
    ['a title of 5,000 characters', answer({ title: 't"'.repeat(2500) })],
    ['a text of 20,000 characters', answer({ sections: [{ kind: 'text', text: 'é"'.repeat(10_000) }] })],
    [
      'cautions of 9,000 characters',
      answer({ cautions: Array(3).fill('c'.repeat(3000)), sections: [table(3)] }),
    ],
    [
      'forty follow-ups of 1,900 characters',
      answer({
        next: Array.from({ length: 40 }, (_, at) => ({
          label: 'l'.repeat(200),
          says: `${at}${'s'.repeat(1900)}`,
        })),
      }),
    ],
    [
      'no words at all',
      answer({
        title: '',
        sections: [
          { kind: 'text', text: '' },
          { kind: 'list', items: [] },
        ],
      }),
    ],
  ])('stays within what Slack takes: %s', (_, given) => {
    const message = answerMessage(given, 'next|channel|1789000000.0001');
    expect(faultsOf(message)).toEqual([]);
  });

  test('a file that only repeats what is said is not shown again; another is', () => {
    const file = (content: string) => ({ fileName: 'label-B1.txt', mediaType: 'text/plain', content });
    const sections = [{ kind: 'list' as const, items: ['Oat bars', 'Use by Mon Nov 30'] }];
    const drawn = (content: string) =>
      words(answerMessage(answer({ sections, attachments: [file(content)] }), 'next|channel|'));
    expect(drawn('Oat bars\n\nUse by Mon Nov 30\n')).not.toContain('label-B1.txt');
    expect(drawn('Oat bars\nKeep cold\n')).toContain('label-B1.txt');
  });

  test('counts what it leaves out', () => {
    const message = answerMessage(answer({ sections: [table(500, 'oat bar, nut-free')] }), 'b');
    const shownRows = words(message).match(/^oat bar, nut-free \d+/gm)?.length ?? 0;
    expect(shownRows).toBeGreaterThan(100);
    expect(words(message)).toContain(`and ${500 - shownRows} more`);
  });

  test('names how many parts are left out', () => {
    const message = answerMessage(answer({ sections: Array(60).fill({ kind: 'text', text: 'x' }) }), 'b');
    expect(message.blocks).toHaveLength(50);
    expect(words(message)).toContain('and 12 more parts');
  });

  test('keeps cautions and follow-ups when the rest is too long', () => {
    const message = answerMessage(
      answer({
        sections: [table(500)],
        cautions: ['Hold cold.'],
        next: [{ label: 'Swap', says: 'nut free' }],
      }),
      'b',
    );
    expect(words(message)).toContain('Hold cold.');
    expect(message.blocks.at(-1)?.type).toBe('actions');
  });

  test('leaves out a follow-up whose words a button cannot carry whole', () => {
    const { blocks } = answerMessage(answer({ next: [{ label: 'Long', says: 's'.repeat(2001) }] }), 'b');
    expect(blocks.map((block) => block.type)).toEqual(['header']);
  });

  test('a narrow table stands in columns a phone shows unbroken', () => {
    const { blocks } = answerMessage(answer({ sections: [table(3, 'oat bars')] }), 'b');
    expect(JSON.stringify(blocks)).toContain('rich_text_preformatted');
    for (const { text } of textsOf(blocks)) {
      for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(40);
    }
  });

  test('a wide table is a list: the first cell, then the others by their names', () => {
    const message = answerMessage(
      answer({ sections: [table(2, 'a batch with a name longer than forty columns')] }),
      'b',
    );
    expect(JSON.stringify(message.blocks)).toContain('rich_text_list');
    expect(words(message)).toContain('a batch with a name longer than forty columns 1\n: Pieces 1');
  });

  test('nobody is paged, wherever the words come from', () => {
    const evil = '<!channel> <@U0STAFF> <!subteam^S1|x> <#C1> <http://x|y> & *b*';
    const message = answerMessage(
      answer({
        title: evil,
        sections: [
          { kind: 'text', text: evil },
          { kind: 'list', heading: evil, items: [evil] },
          { kind: 'table', heading: evil, columns: [{ name: evil, align: 'left' }], rows: [[evil]] },
        ],
        cautions: [evil],
        next: [{ label: evil, says: evil }],
        attachments: [{ fileName: evil, mediaType: evil, content: evil }],
      }),
      'b',
    );
    expect(faultsOf(message)).toEqual([]);
    expect(faultsOf(errorMessage({ code: 'x', message: evil, hint: evil }))).toEqual([]);
  });

  test('any answer at all stays within what Slack takes', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.constantFrom('<!here>', '&', '\ud83d', ''),
    );
    const section: fc.Arbitrary<Section> = fc.oneof(
      fc.record({ kind: fc.constant('text' as const), text }),
      fc.record({
        kind: fc.constantFrom('list' as const, 'steps' as const),
        heading: text,
        items: fc.array(text),
      }),
      fc.record({
        kind: fc.constant('table' as const),
        columns: fc.array(
          fc.record({ name: text, align: fc.constantFrom('left' as const, 'right' as const) }),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        rows: fc.array(fc.array(text, { maxLength: 5 })),
      }),
    );
    const any = fc.record({
      title: text,
      sections: fc.array(section, { maxLength: 60 }),
      cautions: fc.array(text),
      next: fc.array(fc.record({ label: text, says: text })),
    });
    fc.assert(
      fc.property(any, (parts) => {
        expect(faultsOf(answerMessage(answer(parts), 'b'))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
