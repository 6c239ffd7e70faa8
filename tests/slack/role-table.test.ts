import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { FORM_IDS, type FormId } from '../../src/chat/forms/form.ts';
import type { Intent } from '../../src/chat/slots.ts';
import { LISTENERS } from '../../src/slack/listeners/index.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { FORM_ROWS, INTENT_ROWS } from '../helpers/role-rows.ts';
import {
  command,
  directMessage,
  eventBody,
  homeOpened,
  homePress,
  mention,
  press,
  shortcut,
  TEAM,
  viewSubmission,
} from './payloads.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

/** People as Slack knows them; the letter is theirs in the rows. A stranger comes through a channel shared with us. */
const PEOPLE = {
  staff: { id: 'U0STAFF', letter: 's', home: TEAM },
  intern: { id: 'U0INTERN', letter: 'i', home: TEAM },
  athlete: { id: 'U0ATHLETE', letter: 'a', home: TEAM },
  guest: { id: 'U0GUEST', letter: 'g', home: TEAM },
  stranger: { id: 'U0STRANGER', letter: 'g', home: 'T0OTHER' },
} as const;
type Who = keyof typeof PEOPLE;
const WHO = Object.keys(PEOPLE) as Who[];
const REFUSED =
  /That is for (?:members of this team|kitchen staff)|roster is for kitchen staff|between that person and the staff|kept for the team only/;

/** How each intent is said. */
const SAID: Readonly<Record<Intent, string>> = {
  scale: '40 oat bars',
  measure: '3/4 cup oats in grams',
  macros: 'macros oat bars',
  swap: 'swap milk in oat bars',
  allergens: 'are the cherry oat bars nut free',
  recipes: 'recipes',
  help: 'help',
  medical: 'I have been dizzy since practice',
  emergency: 'she ate a bar and cannot breathe',
  unknown: 'qwrtz plonk',
  stock: 'stock',
  schedule: 'schedule next week',
  fuel: 'what should I eat after lift, 82 kg',
  supplement: 'can I take creatine',
  balance: 'make the oat bars 12 g protein each',
  plan: 'plan saturday 12',
  shop: 'shopping list for saturday',
  cost: 'cost of 40 oat bars',
  made: 'made 24 oat bars',
  served: 'served 1 oat bar from fridge a',
  tossed: 'tossed 1 oat bar from fridge a',
  counted: 'counted 30 oat bars in fridge a',
  temperature: 'fridge a 37F',
  game: 'add game dec 9 2pm vs Riverton',
  remind: 'remind us thursday 3pm to soak dates',
  trace: 'trace B1',
  settings: 'settings',
};
/** What is narrower than its intent, and the words of the buttons whose outcome a reminder shows. */
const NARROWER: readonly (readonly [says: string, letters: string])[] = [
  ['roster', 'si'],
  ['needs of WP-07', 's'],
  ['WP-07 needs: peanut', 's'],
  ['import roster.csv', 's'],
  ['show my needs', 'sia'],
  ['my needs: peanut', 'sia'],
  ['delete my needs', 'sia'],
  ['import https://calendar.test/soccer.ics', 'si'],
  ["I've got R1", 'si'],
  ['snooze R1 30 min', 'si'],
  ['done R1', 'si'],
  ['cancel R2', 'si'],
  ['undo', 'si'],
];
const FILLED: Readonly<Record<FormId, Record<string, string | string[]>>> = {
  batch: { recipe: 'oat-bars', pieces: '40', place: 'fridge_a', day: '2026-09-14' },
  count: { doing: 'served', pieces: '1' },
  reading: { fridge_a: '37', unit: 'F' },
  game: { day: '2026-09-19', time: '14:00', opponent: 'Riverton', side: 'home' },
  needs: { avoid: ['peanut'] },
  settings: { zone: 'America/Denver', most_days: '5', calories: 'no' },
};

let store: RememberingKitchen;
let wired: Wired;
let calls: Call[];

beforeAll(async () => {
  const clock = { now: Date.UTC(2026, 8, 14, 15), nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  const rethrow = (error: unknown): never => {
    throw error;
  };
  const chat = createChat(store.kitchen, rethrow);
  wired = await wire(chat, {
    clock,
    staff: [PEOPLE.staff.id],
    interns: [PEOPLE.intern.id],
    patienceMs: 20_000,
  });
  calls = fakeSlack({}, (id) => {
    if (id === PEOPLE.stranger.id) return { team_id: 'T0OTHER', is_stranger: true };
    return id === PEOPLE.guest.id ? { is_restricted: true } : {};
  });
  for (const text of [SAID.made, SAID.game, SAID.remind, SAID.remind.replace('soak', 'pit')])
    await does(command(text, { user_id: PEOPLE.staff.id }));
});
afterAll(() => store.close());

/** Everything that is written down, table by table. */
async function written(): Promise<string> {
  const { db } = await store.memory.database();
  const tables = await db.introspection.getTables();
  const own = [...new Set(tables.map(({ name }) => name))].filter((name) => !/migration/.test(name)).sort();
  const rows = own.map(async (name) => [
    name,
    await db
      .selectFrom(name as 'events')
      .selectAll()
      .execute(),
  ]);
  return JSON.stringify(await Promise.all(rows));
}

async function does(payload: object): Promise<Call[]> {
  calls.length = 0;
  await wired.receiver.send(payload as never);
  await wired.inFlight.drain(20_000);
  // Two presses within three seconds are one impatient finger.
  wired.clock.now += 4_000;
  return sent(calls).filter(({ method }) => method !== 'views.publish');
}

const userOf = (who: Who) => ({ id: PEOPLE[who].id, team_id: PEOPLE[who].home });
const channelOf = (who: Who) => ({ user: PEOPLE[who].id, user_team: PEOPLE[who].home });
const pressing = (who: Who, payload: ReturnType<typeof press>, action: object) => ({
  ...payload,
  user: userOf(who),
  actions: [{ ...payload.actions[0], ...action }],
});

/** Every way to say words: typed, or by a button that says them. */
const WAYS: Readonly<Record<string, (who: Who, text: string) => object>> = {
  command: (who, text) => command(text, { user_id: PEOPLE[who].id }),
  mention: (who, text) => eventBody(mention(text, channelOf(who))),
  'direct message': (who, text) =>
    eventBody(directMessage(text, { user: PEOPLE[who].id, team: PEOPLE[who].home, channel: 'D0ONE' })),
  button: (who, text) => pressing(who, press(text), {}),
  "a reminder's button": (who, text) => pressing(who, press(text), { action_id: 'mark_1' }),
  'button of the home': (who, text) => ({
    ...homePress({ action_id: 'next_step_1', value: text }),
    user: userOf(who),
  }),
};

/** Nobody but the asker reads that something was refused. */
function expectAside(who: Who, replies: readonly Call[]): void {
  for (const { method, body } of replies) {
    const { id } = PEOPLE[who];
    const isAside =
      (method === 'respond' && body.response_type === 'ephemeral') ||
      (method === 'chat.postEphemeral' && body.user === id) ||
      (method === 'chat.postMessage' && (body.channel === id || body.channel === 'D0ONE'));
    expect([method, isAside]).toEqual([method, true]);
  }
}

const rows = [
  ...Object.entries(INTENT_ROWS).map(([intent, letters]) => [SAID[intent as Intent], letters] as const),
  ...NARROWER,
];

describe('what a person may say, however it is said', () => {
  const cases = rows.flatMap(([says, letters]) =>
    WHO.map((who) => [who, says, letters.includes(PEOPLE[who].letter)] as const),
  );
  test.each(cases)('%s, "%s": %s', async (who, says, isAllowed) => {
    const before = isAllowed ? undefined : await written();
    for (const [way, payloadOf] of Object.entries(WAYS)) {
      const replies = await does(payloadOf(who, says));
      expect([way, replies.length > 0]).toEqual([way, true]);
      expect([way, REFUSED.test(JSON.stringify(replies))]).toEqual([way, !isAllowed]);
      if (!isAllowed) expectAside(who, replies);
    }
    if (!isAllowed) expect(await written()).toBe(before);
  });
});

describe('forms', () => {
  const cases = FORM_IDS.flatMap((id) =>
    WHO.map((who) => [who, id, FORM_ROWS[id].includes(PEOPLE[who].letter)] as const),
  );
  const opening = (who: Who, id: FormId): object[] => [
    { ...homePress({ action_id: `form_${id}`, value: '{}' }), user: userOf(who) },
    pressing(who, press('{}'), { action_id: `form_${id}` }),
    ...(LISTENERS.shortcuts.includes(`form_${id}`) ? [{ ...shortcut(`form_${id}`), user: userOf(who) }] : []),
  ];

  test.each(cases)('%s opens %s by button, home and shortcut: %s', async (who, id, isAllowed) => {
    for (const payload of opening(who, id)) {
      const [, shown, ...others] = await does(payload);
      expect(others).toEqual([]);
      const view = JSON.stringify(shown?.body.view);
      expect(REFUSED.test(view)).toBe(!isAllowed);
      expect(view.includes('"input"')).toBe(isAllowed);
    }
  });

  test.each(cases)('%s submits %s as staff would: %s', async (who, id, isAllowed) => {
    const [payload] = opening('staff', id);
    const [, opened] = await does(payload as object);
    const before = await written();
    const view = { ...(opened?.body.view as { blocks: object[] }), id: `V-${who}-${id}` };
    const [, first] = /"value":"(B\d+@[a-z_]+)"/.exec(JSON.stringify(view)) ?? [];
    // Each against an opponent of their own: the same game said again writes nothing.
    const own = { count: { batch: String(first) }, game: { opponent: `Riverton ${who}` } };
    const filled = {
      ...FILLED[id],
      ...(own as Partial<Record<FormId, object>>)[id],
    } as (typeof FILLED)[FormId];
    // Bars that set an hour ago, whatever else was logged meanwhile.
    wired.clock.now += 3_600_000;
    expect(await does(viewSubmission(view, filled, { user: userOf(who) }))).toEqual([]);
    const said = JSON.stringify(wired.receiver.acknowledged);
    expect(said).toContain('"response_action":"update"');
    expect(REFUSED.test(said)).toBe(!isAllowed);
    expect((await written()) === before).toBe(!isAllowed);
  });
});

describe('the home', () => {
  const OF: Readonly<Record<Who, RegExp>> = {
    staff: /To do now/,
    intern: /To do now/,
    athlete: /Before practice/,
    guest: /What this kitchen makes/,
    stranger: /What this kitchen makes/,
  };
  const WITHOUT = {
    type: 'multi_static_select',
    action_id: 'home_without',
    selected_options: [{ value: 'milk' }],
  };

  test.each(WHO)('of %s shows what this person may see, also after a choice on it', async (who) => {
    for (const payload of [
      eventBody(homeOpened(PEOPLE[who].id)),
      { ...homePress(WITHOUT), user: userOf(who) },
    ]) {
      await does(payload);
      const shown = JSON.stringify(calls.find(({ method }) => method === 'views.publish')?.body.view);
      for (const [other, words] of Object.entries(OF))
        expect([other, words.test(shown)]).toEqual([other, words.source === OF[who].source]);
      expect(shown.includes('form_')).toBe(PEOPLE[who].letter !== 'g');
    }
  });
});

describe('a payload of a workspace that has not installed the app', () => {
  const FOREIGN = { team_id: 'T0OTHER', team: { id: 'T0OTHER', domain: 'other' } };
  const user = { id: PEOPLE.staff.id, team_id: 'T0OTHER' };
  const payloads: readonly (readonly [string, object])[] = [
    ['command', command(SAID.made, { user_id: user.id, ...FOREIGN })],
    ['mention', eventBody(mention(SAID.made, { user: user.id }), { ...FOREIGN, authorizations: undefined })],
    ['button', { ...press(SAID.made), user, ...FOREIGN }],
    ['home', eventBody(homeOpened(user.id), { ...FOREIGN, authorizations: undefined })],
    ['shortcut', { ...shortcut('form_batch'), user, ...FOREIGN }],
  ];
  test.each(payloads)('%s: nothing is answered and nothing is written', async (_, payload) => {
    const before = await written();
    expect(await does(payload)).toEqual([]);
    expect(calls).toEqual([]);
    expect(await written()).toBe(before);
  });
});
