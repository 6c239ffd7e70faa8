import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';

import { COMMANDS } from '../../src/chat/commands/index.ts';
import { FORM_IDS, type FormId } from '../../src/chat/forms/form.ts';
import { addDays, dateOf } from '../../src/kitchen/time/zone.ts';
import { calendarFile } from '../helpers/calendars.ts';
import { faultsOf } from '../slack/message-checks.ts';
import {
  ATHLETE,
  command,
  directMessage,
  eventBody,
  homeOpened,
  homePress,
  mention,
  press,
  STAFF,
  shortcut,
  TEAM,
  viewSubmission,
} from '../slack/payloads.ts';
import { viewFaults } from '../slack/view-checks.ts';
import type { PeerCall } from './slack-peer.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

type View = Parameters<typeof viewFaults>[0];
type Element = { action_id: string; value: string; text?: { text: string } };
type Blocks = { block_id?: string; elements?: Element[] }[];

let views = 0;

/** Homes follow what happens by themselves; a reply is waited for by what it is. */
const REPLIES = /^(?:respond|chat\.)/;

describe.each<Mode>(['http', 'socket'])('every screen over %s', (mode) => {
  let whole: WholeService;
  let told: PeerCall | undefined;

  beforeAll(async () => {
    whole = await startWhole(mode, {}, async ({ kitchen }, nowMs) => {
      await kitchen.reminders(TEAM).add(
        {
          key: 'own:e2e',
          kind: 'own',
          audience: 'kitchen',
          about: { task: 'soak dates' },
          planned: false,
          dueMs: nowMs,
          helpsUntilMs: nowMs + 8 * 3_600_000,
        },
        nowMs,
      );
    });
    const sent = await whole.seen(1);
    told = sent.find(({ body }) => String(body.text).includes('soak dates'));
  });
  afterAll(() => whole.stop());
  beforeEach(() => {
    whole.forget();
    whole.peer.shut.clear();
  });

  const today = () => dateOf(whole.clock.now, whole.store.kitchen.book.settings.timeZone);
  const textOf = (call: PeerCall | undefined): string => String(call?.body.text);
  const viewOf = (call: PeerCall | undefined): View => call?.body.view as View;
  const buttonsOf = (blocks: unknown): (Element & { block_id: string })[] =>
    ((blocks ?? []) as Blocks).flatMap(({ block_id = '', elements = [] }) =>
      elements.filter(({ action_id: id }) => id).map((element) => ({ ...element, block_id })),
    );

  /** A form opened by its button on the home, ready to be filled in. */
  async function opened(id: FormId, user = STAFF): Promise<View & { id: string }> {
    whole.forget();
    await whole.interact(homePress({ action_id: `form_${id}`, value: '{}' }, user));
    const [, updated] = await whole.seen(2);
    views += 1;
    return { ...viewOf(updated), id: `V${mode}${views}` };
  }
  async function submitted(view: View, filled: Record<string, string | string[]>, user = STAFF) {
    const answer = await whole.interact(
      viewSubmission(view as never, filled, { user: { id: user, team_id: TEAM } }),
    );
    return answer as { response_action: string; errors?: object; view?: View };
  }
  async function says(text: string): Promise<string> {
    whole.forget();
    await whole.command(command(text, { user_id: STAFF }));
    const answer = (await whole.seen(1)).find(({ method }) => method === 'respond');
    return textOf(answer);
  }

  describe('a reminder', () => {
    const message = (call: PeerCall | undefined) => ({
      ts: '1789000009.0001',
      text: textOf(call),
      blocks: call?.body.blocks as Blocks,
    });
    async function presses(label: string, on: ReturnType<typeof message>, user = STAFF) {
      whole.forget();
      // Two presses within three seconds are one impatient finger.
      whole.clock.now += 4_000;
      const button = buttonsOf(on.blocks).find(({ text }) => text?.text.includes(label));
      if (!button) throw new Error(`no button ${label}`);
      const payload = press(button.value, { user: { id: user, team_id: TEAM }, message: on });
      await whole.interact({ ...payload, actions: [{ ...payload.actions[0], ...button }] });
      const [call] = (await whole.seen(1)).filter(({ method }) => method !== 'views.publish');
      return call;
    }

    test('was posted at its time, with its three buttons', () => {
      expect(told).toMatchObject({ method: 'chat.postMessage', body: { channel: 'C0KITCHEN' } });
      expect(buttonsOf(told?.body.blocks).map(({ value }) => value.split(' ')[0])).toEqual([
        'got',
        'done',
        'snooze',
      ]);
    });

    test('an athlete who presses is told alone, and changes nothing', async () => {
      expect(await presses("I've got it", message(told), ATHLETE)).toMatchObject({
        method: 'respond',
        body: { response_type: 'ephemeral' },
      });
    });

    test('shows who has it, then who did it; pressed again it says the same', async () => {
      const taken = await presses("I've got it", message(told));
      expect(taken).toMatchObject({ method: 'chat.update', body: { channel: 'C0KITCHEN' } });
      expect(faultsOf(taken?.body as never)).toEqual([]);
      expect(JSON.stringify(taken?.body.blocks)).toContain('has it');
      const done = await presses('Done', message(taken));
      expect(JSON.stringify(done?.body.blocks)).toContain('did it');
      const again = await presses('Done', message(taken));
      expect(JSON.stringify(again?.body.blocks)).toContain('did it');
      const old = await presses('Snooze', message(told));
      expect(JSON.stringify(old?.body.blocks)).toContain('did it');
    });
  });

  describe('the home', () => {
    test.each([
      ['staff', STAFF, 'To do now'],
      ['an athlete', ATHLETE, 'In the fridge now'],
    ])('of %s is shown when it is opened', async (_, user, words) => {
      await whole.event(eventBody(homeOpened(user)));
      const [call] = await whole.seen(1);
      expect(call).toMatchObject({ method: 'views.publish', body: { user_id: user } });
      expect(viewFaults(viewOf(call))).toEqual([]);
      expect(JSON.stringify(viewOf(call))).toContain(words);
    });

    test('has no button that does nothing', async () => {
      await whole.event(eventBody(homeOpened(STAFF)));
      const [home] = await whole.seen(1);
      const buttons = buttonsOf(viewOf(home).blocks);
      expect(buttons.length).toBeGreaterThanOrEqual(5);
      for (const button of buttons) {
        whole.forget();
        await whole.interact(homePress(button));
        const opens = button.action_id.startsWith('form_');
        const calls = await whole.seen(opens ? 2 : 1);
        const methods = calls.map(({ method }) => method).filter((method) => method !== 'views.publish');
        expect([button.action_id, methods]).toEqual([
          button.action_id,
          opens ? ['views.open', 'views.update'] : ['chat.postMessage'],
        ]);
      }
    });

    test('"find me one without" changes the home of that person', async () => {
      await whole.event(eventBody(homeOpened(ATHLETE)));
      await whole.seen(1);
      whole.forget();
      const choice = {
        type: 'multi_static_select',
        action_id: 'home_without',
        selected_options: [{ value: 'milk' }],
      };
      await whole.interact(homePress(choice, ATHLETE));
      const [call] = await whole.seen(1);
      expect(call).toMatchObject({ method: 'views.publish', body: { user_id: ATHLETE } });
      expect(JSON.stringify(viewOf(call))).toContain('Without milk');
    });

    test('follows what is written down within seconds', async () => {
      await whole.event(eventBody(homeOpened(STAFF)));
      await whole.seen(1);
      whole.forget();
      await whole.command(command('fridge a 37F', { user_id: STAFF }));
      const calls = await whole.seen(2);
      const shown = calls.find(({ method }) => method === 'views.publish');
      expect(JSON.stringify(viewOf(shown))).toContain('37 °F');
    });
  });

  describe('forms', () => {
    const FILLED: Readonly<Record<FormId, () => Record<string, string | string[]>>> = {
      batch: () => ({ recipe: 'oat-bars', pieces: '40', place: 'fridge_a', day: addDays(today(), -1) }),
      count: () => ({ doing: 'served', batch: 'B1@fridge_a', pieces: '12' }),
      reading: () => ({ fridge_a: '44', unit: 'F', action: 'moved all to Fridge B' }),
      game: () => ({ day: addDays(today(), 9), time: '14:00', opponent: 'Riverton', side: 'home' }),
      needs: () => ({ avoid: ['peanut'], foods: 'kiwi' }),
      settings: () => ({
        zone: 'America/Denver',
        most_days: '5',
        prep_time: '10:15',
        stock_check_time: '06:45',
        reading_times: '06:45, 14:00',
        closed_weekdays: ['7'],
        par: 'Oat bars 60',
        calories: 'no',
        kitchen_channel: 'C0NEW',
      }),
    };
    const WRONG: Readonly<Partial<Record<FormId, readonly [Record<string, string>, string]>>> = {
      batch: [{ pieces: '0' }, 'pieces'],
      count: [{ pieces: '4000' }, 'pieces'],
      reading: [{ fridge_a: 'cold' }, 'fridge_a'],
      game: [{ day: '2020-01-01' }, 'day'],
      settings: [{ most_days: '9' }, 'most_days'],
    };
    const SAYS: Readonly<Record<FormId, string>> = {
      batch: '40 oat bars',
      count: '12 oat bars served',
      reading: 'above 41 °F',
      game: 'Riverton',
      needs: 'peanut',
      settings: 'Saved',
    };

    test.each([...FORM_IDS])('%s: opened, mended, said, and written down', async (id) => {
      const view = await opened(id);
      expect(viewFaults(view)).toEqual([]);
      const wrong = WRONG[id];
      if (wrong) {
        const sentBack = await submitted(view, { ...FILLED[id](), ...wrong[0] });
        expect([id, Object.keys(sentBack.errors ?? {})]).toEqual([id, [wrong[1]]]);
      }
      const done = await submitted(view, FILLED[id]());
      expect([id, done.response_action]).toEqual([id, 'update']);
      expect(viewFaults(done.view as View)).toEqual([]);
      expect(JSON.stringify(done.view)).toContain(SAYS[id]);
    });

    test('what they wrote is what is answered in words', async () => {
      expect(await says('stock')).toContain('28');
      expect(await says('temperature log')).toContain('moved all to Fridge B');
      expect(await says('schedule next week')).toMatch(/game|Riverton/i);
      expect(await says('settings')).toContain('America/Denver');
      expect(await says('show my needs')).toContain('peanut');
    });

    test.each(FORM_IDS.filter((id) => id !== 'settings'))('%s opens by its shortcut', async (id) => {
      await whole.interact(shortcut(`form_${id}`));
      expect((await whole.seen(2)).map(({ method }) => method)).toEqual(['views.open', 'views.update']);
    });

    test.each(FORM_IDS.filter((id) => id !== 'needs'))('%s is refused to an athlete', async (id) => {
      const view = await opened(id);
      const refused = await opened(id, ATHLETE);
      expect(JSON.stringify(refused)).toContain('for kitchen staff');
      const tried = await submitted(view, FILLED[id](), ATHLETE);
      expect(JSON.stringify(tried.view)).toContain('for kitchen staff');
    });

    test('what somebody avoids is seen and deleted by that person, and in no log', async () => {
      const view = await opened('needs');
      expect(JSON.stringify(view)).toContain('kiwi');
      const gone = await submitted(view, { forget: ['forget'] });
      expect(JSON.stringify(gone.view)).toContain('Deleted');
      expect(await whole.store.kitchen.rosters(TEAM).all()).toEqual([]);
      expect(whole.log.join('')).not.toMatch(/peanut|kiwi/);
    });
  });

  describe('answers', () => {
    test('every follow-up of a scaled batch is answered, for whoever presses', async () => {
      await whole.command(command('40 oat bars', { user_id: STAFF }));
      const [answer] = (await whole.seen(1)).filter(({ method }) => method === 'respond');
      const buttons = buttonsOf(answer?.body.blocks);
      expect(buttons.map(({ text }) => text?.text)).toEqual([
        'In grams',
        'Cut into 6',
        'Nut-free version',
        'Swap something',
        'Log this batch',
      ]);
      for (const button of buttons) {
        whole.forget();
        const payload = press(button.value, { user: { id: STAFF, team_id: TEAM } });
        await whole.interact({ ...payload, actions: [{ ...payload.actions[0], ...button }] });
        const replies = (await whole.seen(1)).filter(({ method }) => method === 'respond');
        expect([button.value, textOf(replies[0])]).toEqual([
          button.value,
          expect.not.stringMatching(/did not understand|Which recipe|went wrong/),
        ]);
      }
    });

    test('a follow-up in a thread leans on what the same person asked there', async () => {
      const thread = { thread_ts: `77.${mode}` };
      const asks = async (text: string, user: string): Promise<string> => {
        whole.forget();
        await whole.event(eventBody(mention(text, { user, ...thread })));
        return textOf((await whole.seen(1))[0]);
      };
      await asks('macros oat bars', STAFF);
      await asks('macros cherry oat bars', ATHLETE);
      expect(await asks('cut into 8', STAFF)).toMatch(/: Oat bars/);
      expect(await asks('cut into 8', ATHLETE)).toMatch(/: Cherry oat bars/);
    });

    test.each([
      'my needs: peanut',
      'show my needs',
      'what should I eat after lift, 82 kg',
      'can I eat the cherry bars',
      'nut free oat bars?',
      'what in stock is nut free',
    ])('"%s" in a channel is read by nobody else', async (text) => {
      await whole.event(eventBody(mention(text)));
      const calls = (await whole.seen(1, REPLIES)).filter(({ method }) => method !== 'views.publish');
      expect(calls.map(({ method }) => method)).toEqual(['chat.postEphemeral']);
      whole.forget();
      await whole.command(command(text));
      const replies = (await whole.seen(1, REPLIES)).filter(({ method }) => method !== 'views.publish');
      expect(replies).toMatchObject([{ method: 'respond', body: { response_type: 'ephemeral' } }]);
    });
  });

  describe('every command', () => {
    const examples = COMMANDS.flatMap(({ help, roles }) =>
      help.examples.map((example) => [example, roles.includes('athlete')] as const),
    );
    test.each(examples)('"%s" is answered within what Slack takes', async (example, isForAthletes) => {
      for (const user of [STAFF, ATHLETE]) {
        whole.forget();
        await whole.command(command(example, { user_id: user }));
        const calls = await whole.seen(1, REPLIES);
        const [answer] = calls.filter(({ method }) => method === 'respond');
        expect([faultsOf(answer?.body as never), textOf(answer)]).toEqual([
          [],
          expect.not.stringMatching(/went wrong|did not understand/),
        ]);
        if (user === ATHLETE && !isForAthletes) {
          expect(textOf(answer)).toMatch(/kitchen staff|between that person/);
          expect(answer?.body.response_type).toBe('ephemeral');
        }
      }
    });
  });

  test('a calendar file sent to the bot is imported', async () => {
    whole.peer.files.set('/files/F1/soccer.ics', calendarFile('plain'));
    const files = [
      {
        id: 'F1',
        name: 'soccer.ics',
        mimetype: 'text/calendar',
        url_private_download: `${whole.peer.origin}/files/F1/soccer.ics`,
      },
    ];
    await whole.event(eventBody(directMessage('', { user: STAFF, subtype: 'file_share', files })));
    const calls = (await whole.seen(1, REPLIES)).filter(({ method }) => method === 'chat.postMessage');
    expect(textOf(calls[0])).toMatch(/\d+ added/);
  });

  test('an address inside the network is not fetched', async () => {
    const text = `import <${whole.peer.origin.replace('http:', 'https:')}/x.ics>`;
    expect(await says(text)).toMatch(/cannot be fetched|public internet/);
  });

  test('the log holds no words of people and no secrets', () => {
    expect(whole.log.join('')).not.toMatch(/xoxb|xapp|Riverton|soak/);
  });
});

describe.each<Mode>(['http', 'socket'])('a reminder whose channel is gone, over %s', (mode) => {
  test.each(['is_archived', 'channel_not_found', 'not_in_channel'])(
    '%s: goes to staff directly, once, with the reason',
    async (error) => {
      const whole = await startWhole(mode, { kitchenChannel: 'C0GONE' }, async ({ kitchen }, nowMs) => {
        await kitchen.reminders(TEAM).add(
          {
            key: 'own:gone',
            kind: 'own',
            audience: 'kitchen',
            about: { task: 'soak dates' },
            planned: false,
            dueMs: nowMs + 1,
            helpsUntilMs: nowMs + 8 * 3_600_000,
          },
          nowMs,
        );
      });
      try {
        whole.peer.shut.set('C0GONE', error);
        whole.clock.now += 60_000;
        const posts = async (count: number) =>
          (await whole.seen(count)).filter(({ body }) => String(body.text).includes('soak dates'));
        // The next minute's look comes by itself; it need not be waited for.
        const { startReminders } = await import('../../src/remind.ts');
        const { slackMessenger } = await import('../../src/slack/messenger.ts');
        const messenger = slackMessenger({
          botToken: 'xoxb-test',
          apiUrl: whole.peer.apiUrl,
          channels: { kitchen: 'C0GONE', dietitian: 'C0GONE' },
          staff: async () => [STAFF],
        });
        const { kitchen, memory } = whole.store;
        const parts = { kitchen, memory, workspace: TEAM, messenger, report: () => {} };
        const scheduler = await startReminders(parts);
        await scheduler.look();
        await scheduler.look();
        await scheduler.stop();
        const sent = await posts(2);
        expect(sent.map(({ body }) => body.channel)).toEqual(['C0GONE', STAFF]);
        expect(String(sent[1]?.body.text)).toMatch(/could not be posted in its channel/);
      } finally {
        await whole.stop();
      }
    },
  );
});
