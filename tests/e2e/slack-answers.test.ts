import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/chat/commands/index.ts';
import { faultsOf } from '../slack/message-checks.ts';
import { ATHLETE, command, eventBody, mention, press, STAFF, TEAM } from '../slack/payloads.ts';
import { buttonsOf, REPLIES, screensOf, textOf } from './screens.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

describe.each<Mode>(['http', 'socket'])('what is answered over %s', (mode) => {
  let whole: WholeService;
  let screens: ReturnType<typeof screensOf>;
  beforeAll(async () => {
    whole = await startWhole(mode);
    screens = screensOf(whole);
  });
  afterAll(() => whole.stop());
  beforeEach(() => {
    whole.forget();
    whole.peer.shut.clear();
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

  test('an address inside the network is not fetched', async () => {
    const text = `import <${whole.peer.origin.replace('http:', 'https:')}/x.ics>`;
    expect(await screens.says(text)).toMatch(/cannot be fetched|public internet/);
  });
});
