import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { recordMade } from '../../src/kitchen/stock/record-made.ts';
import { recordReadings } from '../../src/kitchen/stock/temperature.ts';
import type { Recipe } from '../../src/nutrition/recipe.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { game } from '../helpers/reminder-kitchen.ts';
import { textsOf } from './message-checks.ts';
import {
  ATHLETE,
  command,
  eventBody,
  homeOpened,
  homePress,
  STAFF,
  TEAM,
  viewSubmission,
} from './payloads.ts';
import { viewFaults } from './view-checks.ts';
import { type Call, fakeSlack, sent, type Wired, wire } from './wire.ts';

type View = Parameters<typeof viewFaults>[0];
const NOW = Date.UTC(2026, 8, 14, 15);
let store: RememberingKitchen;
let wired: Wired;
let calls: Call[];
const rethrow = (error: unknown): never => {
  throw error;
};

beforeEach(async () => {
  const clock = { now: NOW, nowMs: () => clock.now };
  store = await rememberingKitchen(clock);
  wired = await wire(createChat(store.kitchen, rethrow), { clock });
  calls = fakeSlack();
});
afterEach(() => store.close());

const desk = () => ({ ledger: store.kitchen.ledgers(TEAM), book: store.kitchen.book, nowMs: NOW });
const recipe = (id: string) => store.kitchen.book.recipes.get(id) as Recipe;
async function make(id: string, pieces: number, hoursAgo: number, location = 'fridge_a') {
  const atMs = NOW - hoursAgo * 3_600_000;
  const batches = [{ recipe: recipe(id), pieces, lots: [], location }];
  await recordMade(desk(), { who: 'IN-01', atMs, batches });
}
async function send(payload: object): Promise<Call[]> {
  calls.length = 0;
  await wired.receiver.send(payload as never);
  await wired.inFlight.drain(2000);
  return sent(calls);
}
const open = async (user: string) => viewOf((await send(eventBody(homeOpened(user))))[0]);
const viewOf = (call: Call | undefined): View => call?.body.view as View;
const wordsOf = (view: View): string =>
  textsOf(view.blocks)
    .map(({ text }) => text)
    .join('\n');

describe('the home of the kitchen', () => {
  test('shows what needs doing, games and prep, the shelf by date, the fridges, and what can be done', async () => {
    await make('oat-bars', 40, 24);
    await make('cherry-oat-bars', 6, 24 * 6);
    await make('peanut-cocoa-bites', 5, 24 * 7);
    const readings = [{ place: { id: 'fridge_a', name: 'Fridge A', kind: 'fridge' as const }, tempF: 44 }];
    await recordReadings(desk(), { who: 'IN-01', atMs: NOW - 3_600_000, readings });
    await store.kitchen.games(TEAM).put([game({ date: '2026-09-19' as never, opponent: 'Riverton' })]);
    await store.kitchen.games(TEAM).put([
      game({
        id: 'g2',
        uid: 'g2',
        date: '2026-09-26' as never,
        opponent: 'Eastfield',
        recipeId: 'cherry-oat-bars',
      }),
    ]);
    const view = await open(STAFF);
    expect(viewFaults(view)).toEqual([]);
    const words = wordsOf(view);
    expect(words).toMatch(/Prep sheet: \d+ cherry oat bars/);
    expect(words).toMatch(/Throw out: 5 peanut/);
    expect(words).toMatch(/Last day today: 6 cherry/);
    expect(words).toMatch(/Serve none: 40 oat bars[^\n]*held: Fridge A last read 44 °F/);
    expect(words).toMatch(/Riverton[^\n]*\nPrep[^\n]*\nPack /);
    expect(words).toMatch(/On the shelf[\s\S]*6 cherry[\s\S]*40 oat bars/);
    expect(words).toContain('Fridge A: 44 °F');
    expect(words).toContain('ABOVE 41 °F');
    expect(words).toContain('Fridge B: no reading');
    const buttons = JSON.stringify(view.blocks);
    for (const id of ['batch', 'count', 'reading', 'game', 'settings'])
      expect(buttons).toContain(`form_${id}`);
  });

  test('says so when nothing is there', async () => {
    expect(wordsOf(await open(STAFF))).toContain('Nothing that can be served');
  });

  test('with three hundred batches stays within what Slack takes', async () => {
    for (let at = 0; at < 30; at += 1) {
      const batches = Array.from({ length: 10 }, () => ({ recipe: recipe('oat-bars'), pieces: 3, lots: [] }));
      await recordMade(desk(), { who: 'IN-01', atMs: NOW - at * 5 * 3_600_000, batches });
    }
    for (const user of [STAFF, ATHLETE]) {
      const view = await open(user);
      expect(viewFaults(view)).toEqual([]);
      expect(wordsOf(view)).toMatch(/and \d+ more/);
    }
  });

  test('answers a button in a direct message', async () => {
    await make('oat-bars', 40, 24);
    const [answer] = await send(homePress({ action_id: 'next_step_1', value: 'stock' }));
    expect(answer).toMatchObject({ method: 'chat.postMessage', body: { channel: STAFF } });
  });

  test('is not drawn for the messages beside it, nor twice for one event', async () => {
    expect(await send(eventBody(homeOpened(STAFF, { tab: 'messages' })))).toEqual([]);
    const event = eventBody(homeOpened(STAFF));
    expect(await send(event)).toHaveLength(1);
    expect(await send(event)).toEqual([]);
  });
});

describe('the home of an athlete', () => {
  beforeEach(async () => {
    await make('oat-bars', 40, 24);
    await make('sunflower-cranberry-bars', 20, 24);
    await make('peanut-cocoa-bites', 5, 24 * 7);
  });

  test('shows what is there now, allergens first, and nothing of the kitchen', async () => {
    const view = await open(ATHLETE);
    expect(viewFaults(view)).toEqual([]);
    const words = wordsOf(view);
    expect(words).toMatch(/40 oat bars \(B1\)\nContains: [^\n]*peanut[\s\S]*In it: /);
    expect(words).not.toMatch(/peanut cocoa bites|Throw out|kcal|Fridges and freezers/i);
    expect(words).toMatch(/Caution: Cross-contact/);
    expect(JSON.stringify(view)).not.toMatch(/form_(batch|count|reading|game|settings)/);
  });

  test('finds one without what was chosen, for this person alone', async () => {
    await open(ATHLETE);
    const choice = {
      type: 'multi_static_select',
      action_id: 'home_without',
      selected_options: [{ value: 'peanut' }, { value: 'tree_nut' }],
    };
    const [call, ...others] = await send(homePress(choice, ATHLETE));
    expect(others).toEqual([]);
    expect(call).toMatchObject({ method: 'views.publish', body: { user_id: ATHLETE } });
    const view = viewOf(call);
    expect(viewFaults(view)).toEqual([]);
    expect(wordsOf(view)).toContain('Without peanut, tree nuts');
    expect(wordsOf(view)).not.toContain('40 oat bars');
    expect(wordsOf(view)).toContain('the kitchen itself is not checked');
    const again = await send(homePress({ ...choice, selected_options: [] }, ATHLETE));
    expect(wordsOf(viewOf(again[0]))).toContain('40 oat bars');
  });

  test('follows when the person says on the form what to leave out, and again when it is deleted', async () => {
    await open(ATHLETE);
    calls.length = 0;
    const [, form] = await send(homePress({ action_id: 'form_needs', value: '{}' }, ATHLETE));
    const user = { user: { id: ATHLETE, team_id: TEAM } };
    const submission = viewSubmission(viewOf(form) as never, { avoid: ['peanut', 'tree_nut'] }, user);
    const shown = (await send(submission)).filter(({ method }) => method === 'views.publish');
    expect(wordsOf(viewOf(shown[0]))).toContain('Without peanut, tree nuts');
    expect(wired.log.join('')).not.toMatch(/peanut|tree_nut/);
  });

  test('begins with what the person told before', async () => {
    await store.kitchen.rosters(TEAM).put([
      {
        code: 'WP-07',
        member: ATHLETE,
        avoid: ['peanut', 'tree_nut'],
        foods: [],
        likes: [],
        toldBy: 'self',
        updatedMs: 0,
      },
    ]);
    expect(wordsOf(await open(ATHLETE))).toContain('Without peanut, tree nuts');
  });

  test('a guest sees recipes and no stock', async () => {
    calls = fakeSlack({}, { is_restricted: true });
    const words = wordsOf(await open('U0GUEST'));
    expect(words).toContain('What this kitchen makes');
    expect(words).not.toMatch(/\(B1\)|use by/i);
  });
});

describe('homes that are open', () => {
  const kitchenSays = (text: string) => send(command(text, { user_id: STAFF }));
  const published = (all: readonly Call[]) => all.filter(({ method }) => method === 'views.publish');

  test('follow what is written down, several things at once in one go', async () => {
    await open(STAFF);
    await open(ATHLETE);
    calls.length = 0;
    let release = (): void => {};
    wired.onWait = (ms) => (ms === 2000 ? new Promise((resolve) => (release = resolve)) : undefined);
    for (const text of ['made 40 oat bars yesterday 9:00', 'made 20 cherry oat bars yesterday 9:00']) {
      await wired.receiver.send(command(text, { user_id: STAFF }) as never);
    }
    release();
    await wired.inFlight.drain(2000);
    const shown = published(calls);
    expect(shown.map(({ body }) => body.user_id).sort()).toEqual([ATHLETE, STAFF].sort());
    for (const { body } of shown) expect(JSON.stringify(body.view)).toMatch(/oat bars[\s\S]*cherry oat bars/);
    expect(wired.waits).toContain(2000);
  });

  test('are left alone by questions, and by what changes nothing they show', async () => {
    await open(STAFF);
    expect(published(await kitchenSays('40 oat bars'))).toEqual([]);
    expect(published(await kitchenSays('remind us in 3 hours to soak dates'))).toEqual([]);
    await wired.board.look();
    expect(published(calls)).toEqual([]);
  });

  test('are forgotten half an hour after they were opened', async () => {
    await open(STAFF);
    wired.clock.now += 31 * 60_000;
    expect(published(await kitchenSays('made 40 oat bars'))).toEqual([]);
  });

  test('follow what another instance wrote, and what time alone changes', async () => {
    await make('oat-bars', 40, 24);
    await open(ATHLETE);
    calls.length = 0;
    await make('cherry-oat-bars', 6, 24);
    await wired.board.look();
    expect(published(calls)).toHaveLength(1);
    wired.clock.now += 20 * 60_000;
    calls.length = 0;
    await wired.board.look();
    expect(published(calls)).toEqual([]);
  });

  test('are let go at a stop: nothing waits for them', async () => {
    await open(STAFF);
    wired.board.rest();
    expect(published(await kitchenSays('made 40 oat bars yesterday 9:00'))).toEqual([]);
  });

  test('wait as long as Slack asks, and are shown then', async () => {
    await open(STAFF);
    calls = fakeSlack({ 'views.publish': 'ratelimited' });
    const limited = kitchenSays('made 40 oat bars yesterday 9:00');
    while (!wired.waits.includes(1000)) await new Promise((resolve) => setTimeout(resolve, 2));
    calls = fakeSlack();
    await limited;
    await wired.inFlight.drain(2000);
    expect(published(calls).length).toBeGreaterThanOrEqual(1);
  });
});
