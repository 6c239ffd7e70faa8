import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { ATHLETE, command, eventBody, homeOpened, homePress, STAFF } from '../slack/payloads.ts';
import { viewFaults } from '../slack/view-checks.ts';
import { buttonsOf, viewOf } from './screens.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

describe.each<Mode>(['http', 'socket'])('homes over %s', (mode) => {
  let whole: WholeService;
  beforeAll(async () => {
    whole = await startWhole(mode);
  });
  afterAll(() => whole.stop());
  beforeEach(() => {
    whole.forget();
    whole.peer.shut.clear();
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
});
