import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Answer } from '../../src/chat/answer.ts';
import { createChat } from '../../src/chat/chat.ts';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import type { Recipe } from '../../src/nutrition/recipe.ts';
import { answerMessage } from '../../src/slack/blocks/message.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { faultsOf, textsOf } from './message-checks.ts';
import { TEAM } from './payloads.ts';

const NOW = Date.UTC(2026, 8, 14, 15);
const LONG_NAME = `Bars <!channel> & ${'oats and honey '.repeat(340)}`.slice(0, 5_000);
let store: RememberingKitchen;
let recipe: Recipe;

const rethrow = (error: unknown): never => {
  throw error;
};

/** The demo kitchen, with a card of 40 ingredients and a name of 5 kB, and 300 batches of it and of oat bars. */
beforeAll(async () => {
  store = await rememberingKitchen({ nowMs: () => NOW });
  const { kitchen } = store;
  const oatBars = kitchen.book.recipes.get('oat-bars');
  if (!oatBars) throw new Error('the demo kitchen has no oat bars');
  const lines = Array.from({ length: 40 }, (_, at) => oatBars.lines[at % oatBars.lines.length]);
  recipe = { ...oatBars, id: 'long', title: LONG_NAME, lines: lines.filter((line) => line !== undefined) };
  store = {
    ...store,
    kitchen: {
      ...kitchen,
      book: { ...kitchen.book, recipes: new Map([...kitchen.book.recipes, ['long', recipe]]) },
    },
  };
  const desk = { ledger: kitchen.ledgers(TEAM), book: store.kitchen.book, nowMs: NOW };
  for (let at = 0; at < 30; at += 1) {
    await recordMade(desk, {
      who: 'IN-01',
      atMs: NOW - at * 3_600_000,
      batches: Array.from({ length: 10 }, (_, part) => ({
        recipe: part % 2 ? recipe : oatBars,
        pieces: 1 + part,
        lots: [],
      })),
    });
  }
}, 60_000);
afterAll(() => store.close());

async function asked(text: string, role: 'staff' | 'athlete' = 'staff'): Promise<Answer> {
  const reply = await createChat(store.kitchen, rethrow).ask({
    text,
    asker: { role, who: 'U0STAFF', workspace: TEAM },
    conversation: text,
    isPrivate: true,
    nowMs: NOW,
  });
  if (!reply.answer) throw new Error(`${text}: ${reply.error?.message}`);
  return reply.answer;
}

describe('with 300 batches, a card of 40 ingredients and a name of 5 kB', () => {
  test.each([
    'stock',
    'what do we use first',
    'toss everything expired',
    'what expires tomorrow',
    'recipes',
    'week summary',
    'temperature log',
    'schedule',
    'reminders',
    'what can a nut-free athlete eat',
    'help',
  ])('"%s" is a message Slack takes, and reads on without its blocks', async (text) => {
    const message = answerMessage(await asked(text), 'next|channel|');
    expect(faultsOf(message)).toEqual([]);
    expect(message.text.length).toBeGreaterThan(10);
  });

  test('a scaled batch of it shows its 40 lines, none of them lost', async () => {
    const { kitchen } = store;
    const { batchAnswer } = await import('../../src/chat/commands/scale/batch-answer.ts');
    const { scaleRecipe } = await import('../../src/nutrition/scale/scale-recipe.ts');
    const scaled = scaleRecipe(
      recipe,
      kitchen.book.foods,
      { kind: 'pieces', pieces: 400 },
      { pans: kitchen.book.settings.pans },
    );
    const answer = batchAnswer(scaled, kitchen.book, {});
    const message = answerMessage(answer, 'next|channel|');
    expect(faultsOf(message)).toEqual([]);
    const table = answer.sections.find((section) => section.kind === 'table');
    expect(table?.rows).toHaveLength(40);
    const shown = textsOf(message.blocks)
      .map(({ text }) => text)
      .join('\n');
    expect(shown).not.toMatch(/and \d+ more;/);
    for (const [name = ''] of table?.rows ?? []) expect(shown).toContain(name);
  });
});

test('a list of 300 batches says how many are left out', () => {
  const items = Array.from({ length: 300 }, (_, at) => `12 oat bars: B${at}, Fridge A, use by Thu Nov 5`);
  const message = answerMessage(
    {
      title: '3600 can be served',
      sections: [{ kind: 'list', items }],
      cautions: [],
      next: [],
      audience: 'channel',
      data: {},
    },
    'next|channel|',
  );
  const shown = textsOf(message.blocks).map(({ text }) => text);
  const last = shown.filter((text) => text.includes('Fridge A')).length;
  expect(last).toBeGreaterThan(50);
  expect(shown.join('\n')).toContain(`and ${300 - last} more`);
});
