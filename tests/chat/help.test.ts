import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/chat/commands/index.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });
const help = COMMANDS.find(({ intent }) => intent === 'help');

const helpOn = async (topic?: string, role: PersonRole = 'staff'): Promise<string> => {
  if (!help) throw new Error('there is no help');
  const asker = { role, who: role, workspace: 'local' };
  const request = { text: 'help', asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
  const slots = topic === undefined ? {} : { topic };
  return plainText((await help.answers({ slots, request, kitchen, conversation: {} })).answer, 80);
};

describe('help', () => {
  test('fits a screen and is grouped by what people want', async () => {
    const text = await helpOn();
    expect(text.split('\n').length).toBeLessThanOrEqual(40);
    expect(text).toMatch(/Make it[\s\S]*recipes/);
  });

  test('shows an athlete nothing an athlete may not use', async () => {
    const text = await helpOn(undefined, 'athlete');
    expect(text).not.toMatch(/\b(made|tossed|shop)\b/);
  });

  test('on a command gives its examples', async () => {
    const text = await helpOn('recipes');
    expect(text).toMatch(/^recipes: /);
    expect(text).toContain('nut-free recipes');
  });

  test.each([
    ['recipe', /^recipes: /],
    ['recpies', /^recipes: /],
    ['supplements', /^supplement: /],
    ['Recipes', /^recipes: /],
  ])('on "%s" finds the command that is meant', async (topic, title) => {
    expect(await helpOn(topic)).toMatch(title);
  });

  test('on nonsense names what there is help on', async () => {
    expect(await helpOn('qqqqzzzz')).toMatch(/There is no help on "qqqqzzzz"[\s\S]*recipes/);
  });
});
