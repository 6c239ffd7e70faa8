import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { FORM_IDS } from '../../src/chat/forms/form.ts';
import type { PersonRole, Request } from '../../src/chat/request.ts';
import { INTENTS } from '../../src/chat/slots.ts';
import { LISTENERS } from '../../src/slack/listeners/index.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { FORM_ROWS, INTENT_ROWS } from '../helpers/role-rows.ts';

const ROLES: readonly PersonRole[] = ['staff', 'intern', 'athlete', 'guest'];
const clock = { nowMs: () => Date.UTC(2026, 8, 14, 15) };
let store: RememberingKitchen;
let chat: Chat;
beforeAll(async () => {
  store = await rememberingKitchen(clock);
  chat = createChat({ ...store.kitchen, choices: store.memory.choices }, () => 'id');
});
afterAll(() => store.close());

const request = (role: PersonRole): Request => ({
  text: 'x',
  asker: { role, who: 'U0WHO', workspace: 'T0HERONS' },
  conversation: `T0HERONS:${role}`,
  isPrivate: true,
  nowMs: clock.nowMs(),
});
const pairs = <Id extends string>(table: Readonly<Record<Id, string>>) =>
  (Object.entries(table) as [Id, string][]).flatMap(([id, allowed]) =>
    ROLES.map((role) => [role, id, allowed.includes(role.charAt(0))] as const),
  );

describe('role and action', () => {
  test('every intent and every form has a row', () => {
    expect(Object.keys(INTENT_ROWS).sort()).toEqual([...INTENTS].sort());
    expect(Object.keys(FORM_ROWS).sort()).toEqual([...FORM_IDS].sort());
  });

  test.each(pairs(INTENT_ROWS))('%s, %s: %s', async (role, intent, isAllowed) => {
    const { error } = await chat.act(request(role), { intent, slots: {} });
    expect(error?.code !== 'not_allowed').toBe(isAllowed);
    if (!isAllowed)
      expect(error?.message).toBe(
        role === 'guest' ? 'That is for members of this team.' : 'That is for kitchen staff.',
      );
  });

  test.each(pairs(FORM_ROWS))('%s, the form %s: %s', async (role, id, isAllowed) => {
    const opened = await chat.forms.open(id, request(role));
    expect('error' in opened ? opened.error.code : 'shown').toBe(isAllowed ? 'shown' : 'not_allowed');
    if (isAllowed) return;
    expect(await chat.forms.submit(id, request(role), {})).toMatchObject({
      reply: { error: { code: 'not_allowed' } },
    });
  });

  test('every button, shortcut and view of Slack says words or is a form, so that it is one of these rows', () => {
    const forms = FORM_IDS.map((id) => `form_${id}`);
    const unknown = [...LISTENERS.actions, ...LISTENERS.shortcuts, ...LISTENERS.views].filter(
      (id) => !forms.includes(id) && !/^(next_step|mark)_\d$|^home_without$/.test(id),
    );
    expect(unknown).toEqual([]);
  });
});
