import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { FORM_IDS, type FormId, type FormPage, type FormValues } from '../../src/chat/forms/form.ts';
import { FORMS } from '../../src/chat/forms/forms.ts';
import type { PersonRole, Request } from '../../src/chat/request.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

let store: RememberingKitchen;
let chat: Chat;
const clock = { now: 0, nowMs: () => clock.now };
beforeEach(async () => {
  clock.now = at('2026-11-02 09:30');
  store = await rememberingKitchen(clock);
  chat = createChat(store.kitchen, (error) => {
    throw error;
  });
});
afterEach(() => store.close());

const request = (role: PersonRole = 'staff', requestKey?: string): Request => ({
  text: '',
  asker: { role, who: 'U1', workspace: 'T1' },
  conversation: 'form',
  isPrivate: true,
  nowMs: clock.now,
  ...(requestKey === undefined ? {} : { requestKey }),
});
const submit = (id: FormId, values: FormValues, requestKey?: string) =>
  chat.forms.submit(id, request('staff', requestKey), values);
async function said(id: FormId, values: FormValues, requestKey?: string): Promise<string> {
  const done = await submit(id, values, requestKey);
  if ('faults' in done) throw new Error(JSON.stringify(done.faults));
  return done.reply.answer?.title ?? String(done.reply.error?.message);
}
async function faults(id: FormId, values: FormValues) {
  const done = await submit(id, values);
  return 'faults' in done ? done.faults : {};
}
async function page(id: FormId, given?: FormValues): Promise<FormPage> {
  const opened = await chat.forms.open(id, request(), given);
  if ('error' in opened) throw new Error(opened.error.message);
  return opened;
}
const ask = (text: string) => chat.ask({ ...request(), text });
const BATCH = { recipe: 'oat-bars', pieces: '40', place: 'fridge_a', day: '2026-11-02' };

describe('a batch', () => {
  test('is logged as "made 40 oat bars" is', async () => {
    expect(await said('batch', BATCH)).toMatch(/^40 oat bars/);
    expect((await ask('stock')).answer?.data.setting).toBe(40);
    const [holding] = await store.kitchen.ledgers('T1').holdings();
    expect(holding).toMatchObject({ pieces: 40, location: 'fridge_a', batch: { recipeId: 'oat-bars' } });
  });

  test('submitted twice is logged once', async () => {
    await said('batch', BATCH, 'view:V1');
    expect(await said('batch', BATCH, 'view:V1')).toMatch(/[Aa]lready logged/);
    expect(await store.kitchen.ledgers('T1').holdings()).toHaveLength(1);
  });

  test('of yesterday evening begins its date yesterday', async () => {
    await said('batch', { ...BATCH, day: '2026-11-01', time: '19:00' });
    const [holding] = await store.kitchen.ledgers('T1').holdings();
    expect(holding).toMatchObject({ useBy: '2026-11-07', batch: { madeDate: '2026-11-01' } });
  });

  test.each([
    [{ ...BATCH, pieces: '0' }, 'pieces'],
    [{ ...BATCH, pieces: 'many' }, 'pieces'],
    [{ ...BATCH, pieces: '4.5' }, 'pieces'],
    [{ ...BATCH, pieces: undefined }, 'pieces'],
    [{ ...BATCH, recipe: undefined }, 'recipe'],
    [{ ...BATCH, lot: 'ZZ9' }, 'lot'],
    [{ ...BATCH, day: '2026-11-09' }, 'day'],
    [{ ...BATCH, day: '2026-10-01' }, 'day'],
    [{ ...BATCH, pieces: '900000' }, 'pieces'],
  ])('%o is sent back beside "%s", and nothing is logged', async (values, field) => {
    expect(Object.keys(await faults('batch', values as FormValues))).toEqual([field]);
    expect(await store.kitchen.ledgers('T1').holdings()).toEqual([]);
  });
});

describe('a batch made with a swap', () => {
  const held = () => store.kitchen.ledgers('T1').holdings();
  const SWAP = { ...BATCH, used: 'oat milk', replaced: '2% milk' };

  test('is logged as its words are: named, and with the allergens of what went in', async () => {
    expect(await said('batch', SWAP)).toMatch(/\(oat milk for 2 % Milk\)/);
    await ask('made 40 oat bars with oat milk instead of 2% milk in fridge a');
    const [byForm, inWords] = await held();
    expect(byForm?.batch).toMatchObject({ variant: inWords?.batch.variant, facts: inWords?.batch.facts });
    expect(byForm?.batch.variant).toBeDefined();
  });

  test('says beside the field what is not clear, with the choices; what is mended then counts, and nothing else', async () => {
    const asked = await faults('batch', { ...BATCH, used: 'sunflower butter' });
    expect(Object.keys(asked)).toEqual(['replaced']);
    expect(asked.replaced).toMatch(/Instead of what\?.*One of: .*Rolled oats/);
    expect(await held()).toEqual([]);
    await said('batch', { ...SWAP, pieces: '50' });
    expect(await held()).toMatchObject([{ pieces: 50 }]);
    // Left empty after all: as on the card, whatever was asked before.
    await said('batch', { ...BATCH, pieces: '30' });
    const last = (await held()).find(({ pieces }) => pieces === 30);
    expect(last?.batch.variant).toBeUndefined();
  });

  test.each([
    [{ ...SWAP, used: 'plonk butter' }, 'used', /no food "plonk butter"/],
    [{ ...SWAP, replaced: 'plonk milk' }, 'replaced', /no food "plonk milk"/],
    [{ ...SWAP, used: undefined }, 'used', /what went in instead/],
    [{ ...SWAP, replaced: 'peanut butter, crunchy' }, 'replaced', /Instead of what/],
    [{ ...SWAP, lot: 'L42' }, 'lot_of', /whose lot/],
  ])('%o is sent back beside "%s", and nothing is logged', async (values, field, words) => {
    const found = await faults('batch', values as FormValues);
    expect(Object.keys(found)).toEqual([field]);
    expect(found[field]).toMatch(words);
    expect(await held()).toEqual([]);
  });

  test('keeps the lot with the product it is of', async () => {
    await said('batch', { ...SWAP, lot: 'HW2604A', lot_of: 'whey-vanilla' });
    expect((await held())[0]?.batch.lots).toEqual([{ foodId: 'whey-vanilla', lot: 'HW2604A' }]);
  });
});

describe('a batch with a product the dietitian has not approved', () => {
  const held = () => store.kitchen.ledgers('T1').holdings();
  const COOKIE = { ...BATCH, used: 'cookie whey', replaced: 'vanilla whey' };

  test('is sent back; with a reason of staff it is logged, and the reason is kept', async () => {
    const refused = await faults('batch', COOKIE);
    expect(Object.keys(refused)).toEqual(['override']);
    expect(refused.override).toMatch(/not approved by the dietitian. Not logged/);
    expect(await held()).toEqual([]);
    const done = await submit('batch', { ...COOKIE, override: 'dietitian approved by phone' });
    const answer = 'reply' in done ? done.reply.answer : undefined;
    expect(answer?.cautions.join(' ')).toContain('Override kept: dietitian approved by phone');
    expect((await held())[0]?.batch.facts.override).toEqual({
      products: [expect.stringContaining('cookie')],
      reason: 'dietitian approved by phone',
    });
    expect(JSON.stringify((await ask('trace B1')).answer)).toContain(
      'logged by U1: dietitian approved by phone',
    );
  });

  test('of an intern: not asked for, not taken, and said where it can be seen', async () => {
    const opened = await chat.forms.open('batch', request('intern'));
    expect('fields' in opened && opened.fields.some(({ id }) => id === 'override')).toBe(false);
    const plain = await chat.forms.submit('batch', request('intern'), COOKIE);
    expect(plain).toMatchObject({ faults: { recipe: expect.stringContaining('not approved') } });
    const forged = await chat.forms.submit('batch', request('intern'), { ...COOKIE, override: 'me' });
    expect(forged).toMatchObject({ reply: { error: { code: 'not_allowed' } } });
    expect(await held()).toEqual([]);
  });

  test('all approved: a reason is not kept, and that is said', async () => {
    const done = await submit('batch', { ...BATCH, override: 'just in case' });
    const answer = 'reply' in done ? done.reply.answer : undefined;
    expect(answer?.cautions.join(' ')).toContain('no override was needed');
  });
});

describe('serve, toss, count', () => {
  beforeEach(async () => {
    await said('batch', { ...BATCH, day: '2026-11-01', time: '09:00' });
  });
  const B1 = { batch: 'B1@fridge_a' };

  test('lists each batch where it stands', async () => {
    const field = (await page('count')).fields.find(({ id }) => id === 'batch');
    expect(field).toMatchObject({
      options: [{ value: 'B1@fridge_a', label: '40 oat bars: B1, Fridge A, use by Sat Nov 7' }],
    });
  });

  test('serves, tosses with a reason, counts', async () => {
    expect(await said('count', { ...B1, doing: 'served', pieces: '12', team: 'rowing' })).toMatch(
      /^12 oat bars served: B1 /,
    );
    expect(await said('count', { ...B1, doing: 'tossed', pieces: '3', reason: 'dropped' })).toMatch(
      /^3 oat bars thrown out: B1 /,
    );
    expect(await said('count', { ...B1, doing: 'counted', pieces: '24' })).toMatch(/^24 oat bars counted/);
    expect(await said('count', { ...B1, doing: 'tossed' })).toMatch(/^24 oat bars thrown out/);
  });

  test.each([
    [{ ...B1, doing: 'served', pieces: '41' }, 'pieces'],
    [{ ...B1, doing: 'served', pieces: '-1' }, 'pieces'],
    [{ ...B1, doing: 'counted' }, 'pieces'],
    [{ doing: 'served', pieces: '1' }, 'batch'],
    [{ batch: 'B99@fridge_a', doing: 'served', pieces: '1' }, 'batch'],
    [{ ...B1, doing: 'eaten', pieces: '1' }, 'doing'],
  ])('%o is sent back beside "%s"', async (values, field) => {
    expect(Object.keys(await faults('count', values))).toEqual([field]);
    expect(await store.kitchen.ledgers('T1').holdings()).toMatchObject([{ pieces: 40 }]);
  });

  test('an empty shelf offers nothing to fill in', async () => {
    await said('count', { ...B1, doing: 'tossed' });
    expect(await page('count')).toMatchObject({ fields: [], intro: expect.stringContaining('Nothing') });
  });
});

describe('fridge readings', () => {
  test('are logged together, in either scale, and judged', async () => {
    expect(await said('reading', { fridge_a: '38', fridge_b: '39.5', unit: 'F' })).toContain('38');
    expect(await said('reading', { fridge_a: '6,5', unit: 'C' })).toContain('above 41 °F');
  });
  test('need one figure, and figures', async () => {
    expect(Object.keys(await faults('reading', { unit: 'F' }))).toEqual(['fridge_a']);
    expect(Object.keys(await faults('reading', { fridge_b: 'cold', unit: 'F' }))).toEqual(['fridge_b']);
    expect(Object.keys(await faults('reading', { fridge_a: '900', unit: 'F' }))).toEqual(['fridge_a']);
  });
});

describe('a game', () => {
  const GAME = { day: '2026-11-07', time: '14:00', opponent: 'McNeil Tech', side: 'away' };
  test('is kept with all that was said', async () => {
    await said('game', { ...GAME, leaves: '08:30', people: '30', recipe: 'cherry-oat-bars' });
    const games = await store.kitchen.games('T1').between('2026-11-07' as never, '2026-11-07' as never);
    expect(games).toMatchObject([
      { opponent: 'McNeil Tech', side: 'away', time: '14:00', people: 30, recipeId: 'cherry-oat-bars' },
    ]);
    expect(games[0]?.departsMs).toBe(at('2026-11-07 08:30'));
  });
  test.each([
    [{ ...GAME, day: undefined }, 'day'],
    [{ ...GAME, day: '2026-10-20' }, 'day'],
    [{ ...GAME, leaves: '15:00' }, 'leaves'],
    [{ ...GAME, people: '9000' }, 'people'],
  ])('%o is sent back beside "%s"', async (values, field) => {
    expect(Object.keys(await faults('game', values as FormValues))).toEqual([field]);
  });
});

describe('what I avoid', () => {
  const athlete = {
    ...request('athlete'),
    asker: { role: 'athlete', who: 'U0ATHLETE7', workspace: 'T1' } as const,
  };
  const says = async (values: FormValues) => {
    const done = await chat.forms.submit('needs', athlete, values);
    return 'reply' in done ? done.reply : undefined;
  };
  const initial = async () => {
    const opened = await chat.forms.open('needs', athlete);
    return 'fields' in opened
      ? Object.fromEntries(
          opened.fields.map((field) => [field.id, 'initial' in field ? field.initial : undefined]),
        )
      : {};
  };

  test('is told, seen, changed, and deleted by the person, for that person alone', async () => {
    expect(await initial()).toEqual({ avoid: [], foods: undefined });
    const told = await says({ avoid: ['peanut', 'tree_nut'], foods: 'kiwi, banana' });
    expect(told?.answer).toMatchObject({ audience: 'asker' });
    expect(await initial()).toMatchObject({ avoid: ['peanut', 'tree_nut'], foods: 'kiwi, banana' });
    await says({ avoid: ['milk'] });
    expect(await initial()).toMatchObject({ avoid: ['milk'], foods: '' });
    expect(await store.kitchen.rosters('T1').all()).toHaveLength(1);
    expect(await store.kitchen.rosters('T2').all()).toEqual([]);
    const gone = await says({ avoid: ['milk'], forget: ['forget'] });
    expect(gone?.answer?.data.deleted).toBe(true);
    expect(await store.kitchen.rosters('T1').all()).toEqual([]);
  });

  test('nothing chosen is "none", not forgotten', async () => {
    await says({});
    expect(await store.kitchen.rosters('T1').get('U0ATHLETE7')).toMatchObject({ avoid: [], foods: [] });
  });

  test('is not for guests', async () => {
    expect(await chat.forms.open('needs', request('guest'))).toMatchObject({
      error: { code: 'not_allowed' },
    });
  });
});

describe('kitchen settings', () => {
  const unchanged = async (): Promise<FormValues> =>
    Object.fromEntries(
      (await page('settings')).fields.map((field) => [
        field.id,
        'initial' in field ? field.initial : undefined,
      ]),
    );

  test('saved as they are change nothing', async () => {
    await said('settings', await unchanged());
    expect(await store.kitchen.choices?.('T1').get()).toEqual({});
  });

  test('are used by the next request, of this workspace only', async () => {
    await said('settings', {
      ...(await unchanged()),
      zone: 'America/Denver',
      most_days: '4',
      par: 'Oat bars 60\ncherry-oat-bars: 10',
      calories: 'yes',
      prep_time: '10:15',
      reading_times: '14:00, 6:30',
      closed_weekdays: ['6', '7'],
      kitchen_channel: 'C1',
    });
    expect(await store.kitchen.choices?.('T1').get()).toEqual({
      timeZone: 'America/Denver',
      mostDays: 4,
      par: { 'oat-bars': 60, 'cherry-oat-bars': 10 },
      caloriesForAthletes: true,
      prepTime: '10:15',
      readingTimes: ['06:30', '14:00'],
      closedWeekdays: [6, 7],
      kitchenChannel: 'C1',
    });
    await said('batch', BATCH);
    const [holding] = await store.kitchen.ledgers('T1').holdings();
    expect(holding?.useBy).toBe('2026-11-05');
    expect((await ask('schedule')).answer?.data.time_zone).toBe('America/Denver');
    const athlete = { ...request('athlete'), text: 'calories in oat bars' };
    expect((await chat.ask(athlete)).answer?.title).toMatch(/kcal/);
    const elsewhere = { ...athlete, asker: { ...athlete.asker, workspace: 'T2' } };
    expect((await chat.ask(elsewhere)).answer?.title).not.toMatch(/kcal/);
  });

  test('a channel that is taken out again is none', async () => {
    expect(await said('settings', { ...(await unchanged()), kitchen_channel: 'C1' })).toContain(
      "kitchen's channel",
    );
    expect(await said('settings', { ...(await unchanged()) })).not.toContain('Saved');
    await said('settings', { ...(await unchanged()), kitchen_channel: undefined });
    expect(await store.kitchen.choices?.('T1').get()).toEqual({});
  });

  test.each([
    [{ other_zone: 'Mars/Base' }, 'other_zone'],
    [{ most_days: '8' }, 'most_days'],
    [{ most_days: 'x' }, 'most_days'],
    [{ par: 'sourdough 12' }, 'par'],
    [{ par: 'oat bars' }, 'par'],
    [{ reading_times: '25:00' }, 'reading_times'],
    [{ closed_weekdays: ['1', '2', '3', '4', '5', '6', '7'] }, 'closed_weekdays'],
  ])('%o is sent back beside "%s", and nothing is saved', async (values, field) => {
    expect(Object.keys(await faults('settings', { ...(await unchanged()), ...values }))).toEqual([field]);
    expect(await store.kitchen.choices?.('T1').get()).toEqual({});
  });
});

describe('everybody', () => {
  test.each([...FORM_IDS])('%s begins filled in as it was given', async (id) => {
    if (id === 'needs') await said('needs', { avoid: ['milk'] });
    const first = await page(id);
    const given = Object.fromEntries(first.fields.map((field) => [field.id, sample(field)]));
    const second = await page(id, given);
    for (const field of second.fields) {
      expect('initial' in field ? field.initial : undefined).toEqual(given[field.id]);
    }
  });

  test.each([...FORM_IDS])('%s keeps to what a screen takes', async (id) => {
    const { title, submit: button, fields } = await page(id);
    expect(title.length).toBeLessThanOrEqual(24);
    expect(button.length).toBeLessThanOrEqual(24);
    expect(new Set(fields.map((field) => field.id)).size).toBe(fields.length);
  });

  test.each(FORM_IDS.filter((id) => FORMS.get(id)?.roles.includes('athlete') === false))(
    '%s is opened and said by the kitchen only',
    async (id) => {
      for (const role of ['athlete', 'guest'] as const) {
        expect(await chat.forms.open(id, request(role))).toMatchObject({ error: { code: 'not_allowed' } });
        expect(await chat.forms.submit(id, request(role), BATCH)).toMatchObject({
          reply: { error: { code: 'not_allowed' } },
        });
      }
      expect(await store.kitchen.ledgers('T1').holdings()).toEqual([]);
    },
  );

  test('an intern changes no settings', async () => {
    expect(await chat.forms.open('settings', request('intern'))).toMatchObject({
      error: { code: 'not_allowed' },
    });
  });
});

function sample(field: FormPage['fields'][number]): string | readonly string[] {
  if (field.kind === 'choice') return field.options.at(-1)?.value ?? '';
  if (field.kind === 'choices') return [field.options[0]?.value ?? ''];
  return { number: '3', date: '2026-11-01', time: '07:15' }[field.kind as 'number'] ?? 'words';
}
