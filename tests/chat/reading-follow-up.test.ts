import { describe, expect, test } from 'vitest';
import { loadBook } from '../../src/book/load-book.ts';
import type { ConversationState } from '../../src/chat/conversation.ts';
import { read } from '../../src/chat/reading/read.ts';
import type { Intent, Slots } from '../../src/chat/slots.ts';

const book = loadBook([new URL('../../recipes', import.meta.url).pathname]);
const nowMs = Date.parse('2026-11-25T10:00:00-06:00');
const after = (last: Intent, slots: Slots): ConversationState => ({ last: { intent: last, slots } });
const scaled = after('scale', { quantity: 40, unit: 'bar', recipe: 'oat-bars' });
const told = after('macros', { recipe: 'oat-bars' });

describe('a message that leans on the one before', () => {
  test.each<[string, ConversationState, Intent, Slots]>([
    ['cut into 8', told, 'macros', { pieces: 8 }],
    ['cut into 8', scaled, 'scale', { pieces: 8 }],
    ['and for 60', scaled, 'scale', { quantity: 60 }],
    ['60?', scaled, 'scale', { quantity: 60 }],
    ['in grams', scaled, 'scale', { output_unit: 'g' }],
    ['double it', scaled, 'scale', { factor: 2 }],
    ['what about with almond butter', told, 'macros', { add: 'almond-butter' }],
    ['no, the cherry ones', scaled, 'scale', {}],
    ['and for 60', told, 'scale', { quantity: 60 }],
    ['per 100 g', told, 'macros', { per: '100 g' }],
    ['and saturday?', after('schedule', { ask: 'next' }), 'schedule', { when: 'sat' }],
    ['cherry bars', told, 'macros', { recipe: 'cherry-oat-bars' }],
  ])('%j after %j', (text, conversation, intent, slots) => {
    expect(read(text, { book, conversation, nowMs })).toMatchObject({ intent, slots });
  });

  test('a short need asks about allergens with a question mark and for a swap without', () => {
    expect(read('nut free?', { book, conversation: scaled, nowMs })).toEqual({
      intent: 'allergens',
      slots: { avoid: ['peanut', 'tree_nut'] },
    });
    expect(read('nut free version', { book, conversation: scaled, nowMs }).intent).toBe('swap');
  });

  test('the answer to our question keeps what the question was about', () => {
    const conversation: ConversationState = {
      question: {
        slot: 'recipe',
        options: ['Oat bars', 'Cherry oat bars'],
        reading: { intent: 'scale', slots: { quantity: 40 } },
      },
    };
    expect(read('cherry', { book, conversation, nowMs })).toMatchObject({
      intent: 'scale',
      slots: { recipe: 'Cherry oat bars' },
    });
    expect(read('the cherry ones pls', { book, conversation, nowMs })).toMatchObject({
      intent: 'scale',
      slots: { recipe: 'Cherry oat bars' },
    });
  });

  test('a number answers "how many"', () => {
    const conversation: ConversationState = {
      question: {
        slot: 'quantity',
        options: [],
        reading: { intent: 'scale', slots: { recipe: 'oat-bars' } },
      },
    };
    expect(read('48', { book, conversation, nowMs })).toMatchObject({
      intent: 'scale',
      slots: { quantity: 48 },
    });
  });

  test('slots hold only what this message says', () => {
    expect(read('and for 60', { book, conversation: scaled, nowMs }).slots).not.toHaveProperty('recipe');
  });

  test('a new request and an emergency are never taken for a follow-up', () => {
    expect(read('served 12 oat bars', { book, conversation: scaled, nowMs }).intent).toBe('served');
    expect(read('he cant breathe', { book, conversation: scaled, nowMs }).intent).toBe('emergency');
  });
});
