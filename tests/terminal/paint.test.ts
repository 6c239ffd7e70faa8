import { describe, expect, test } from 'vitest';
import type { Reply } from '../../src/chat/chat.ts';
import { paint, screenOf } from '../../src/terminal/paint.ts';

const reply: Reply = {
  request: 'x',
  intent: 'recipes',
  slots: {},
  answer: {
    title: 'Sixteen recipes.',
    sections: [],
    cautions: ['Read the label.'],
    next: [],
    audience: 'channel',
    data: {},
  },
};

describe('the screen', () => {
  test('has color only on a terminal that wants it', () => {
    const tty = { isTTY: true, columns: 40 };
    expect(screenOf(tty, {})).toEqual({ columns: 40, color: true });
    expect(screenOf(tty, { NO_COLOR: '1' }).color).toBe(false);
    expect(screenOf(tty, { TERM: 'dumb' }).color).toBe(false);
    expect(screenOf({}, {})).toEqual({ columns: 80, color: false });
  });

  test('says in words what color only underlines', () => {
    const colored = paint(reply, { columns: 80, color: true });
    expect(colored).toContain('\u001b[');
    expect(colored.replace(/\u001b\[\d+m/g, '')).toBe(paint(reply, { columns: 80, color: false }));
    expect(paint(reply, { columns: 80, color: false })).toContain('Caution: Read the label.');
  });

  test('an error shows what is wrong and what to write, and no control characters', () => {
    const error = { code: 'unknown_recipe', message: 'No recipe "\u001b[2J".', hint: 'Type "recipes".' };
    const text = paint({ request: 'x', intent: 'scale', slots: {}, error }, { columns: 80, color: true });
    expect(text).toBe('No recipe "[2J".\nType "recipes".');
  });
});
