import { describe, expect, test } from 'vitest';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { COMMANDS } from '../../src/chat/commands/index.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { INTENTS, type Intent } from '../../src/chat/slots.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });

const ask = (text: string, role: PersonRole = 'staff'): Promise<Reply> => {
  const chat = createChat(kitchen, () => 'id');
  const asker = { role, who: role, workspace: 'local' };
  return chat.ask({ text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() });
};

const forRole = (role: PersonRole): Intent[] =>
  COMMANDS.filter(({ roles }) => roles.includes(role)).map(({ intent }) => intent);

describe('the list of commands', () => {
  test('has each intent at most once, and explains each in a line', () => {
    const intents = COMMANDS.map(({ intent }) => intent);
    expect(new Set(intents).size).toBe(intents.length);
    for (const { intent, help } of COMMANDS) {
      expect(INTENTS).toContain(intent);
      expect(help.line.length).toBeGreaterThan(5);
      expect(help.line.length).toBeLessThan(80);
    }
  });

  test('lets a guest ask for nothing that is the team’s own', () => {
    const open = [
      'recipes',
      'help',
      'allergens',
      'macros',
      'scale',
      'measure',
      'swap',
      'medical',
      'emergency',
      'unknown',
    ];
    for (const intent of forRole('guest')) expect(open).toContain(intent);
  });

  test('keeps the kitchen’s log and plans to the kitchen', () => {
    const kitchenOnly: Intent[] = [
      'made',
      'served',
      'tossed',
      'counted',
      'temperature',
      'plan',
      'shop',
      'cost',
      'trace',
      'remind',
      'game',
    ];
    for (const intent of kitchenOnly) {
      expect(forRole('intern')).toContain(intent);
      expect(forRole('athlete')).not.toContain(intent);
    }
  });
});

describe('what cannot be read', () => {
  test.each(['', '   ', '\t\n', '\u0000\u0007', '\u200f\u202e', '\ufeff'])('%j is empty', async (text) => {
    const reply = await ask(text);
    expect(reply.answer).toBeUndefined();
    expect(reply.error).toMatchObject({ code: 'empty_request' });
    expect(reply.error?.hint).toContain('40 oat bars');
  });

  test('10 kB is too long, and is told how long it may be', async () => {
    const reply = await ask('oat bars '.repeat(1_200));
    expect(reply.error?.code).toBe('too_long');
    expect(reply.error?.message).toContain('4000');
  });

  test('an unknown request is taught three that work', async () => {
    const reply = await ask('xyzzy plugh');
    expect(reply.intent).toBe('unknown');
    expect(reply.answer?.data.examples).toHaveLength(3);
  });
});
