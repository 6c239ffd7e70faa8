import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { FORM_IDS, type FormId } from '../../src/chat/forms/form.ts';
import { addDays } from '../../src/kitchen/time/zone.ts';
import { ATHLETE, shortcut, TEAM } from '../slack/payloads.ts';
import { viewFaults } from '../slack/view-checks.ts';
import { screensOf, type View } from './screens.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

describe.each<Mode>(['http', 'socket'])('forms over %s', (mode) => {
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

  const today = () => screens.today();
  const opened = (id: FormId, user?: string) => screens.opened(id, user);
  const submitted: typeof screens.submitted = (...given) => screens.submitted(...given);
  const says = (text: string) => screens.says(text);

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

    test('a batch with a swap: asked back beside the field, then logged with it', async () => {
      const view = await opened('batch');
      const filled = { ...FILLED.batch(), used: 'oat milk' };
      const unclear = await submitted(view, { ...filled, used: 'sunflower butter' });
      expect(unclear.errors?.replaced).toContain('Instead of what?');
      const done = await submitted(view, { ...filled, replaced: '2% milk' });
      expect(JSON.stringify(done.view)).toContain('oat milk for 2 % Milk');
    });

    test('a batch with a product nobody approved: sent back, then logged with the reason of staff', async () => {
      const view = await opened('batch');
      const filled = { ...FILLED.batch(), pieces: '8', used: 'cookie whey', replaced: 'vanilla whey' };
      const refused = await submitted(view, filled);
      expect(refused.errors?.override).toContain('not approved by the dietitian');
      const done = await submitted(view, { ...filled, override: 'dietitian approved by phone' });
      expect(JSON.stringify(done.view)).toContain('Override kept: dietitian approved by phone');
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
});
