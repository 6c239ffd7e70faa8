import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

let store: RememberingKitchen;
let chat: Chat;
let nowMs = 0;
beforeEach(async () => {
  nowMs = at('2026-11-02 09:30');
  store = await rememberingKitchen({ nowMs: () => nowMs });
  chat = createChat(store.kitchen, (error) => {
    throw error;
  });
});
afterEach(() => store.close());

const request = (text: string, role: PersonRole, workspace = 'T1') => ({
  text,
  asker: { role, who: role === 'staff' ? 'ST-01' : 'IN-01', workspace },
  conversation: `${workspace} ${role}`,
  isPrivate: true,
  nowMs,
});
const say = (text: string, role: PersonRole = 'staff', workspace = 'T1') =>
  chat.ask(request(text, role, workspace));
const held = () => store.kitchen.ledgers('T1').holdings();

test('a changed label stops every batch of its recipes until staff have checked it', async () => {
  const { answer } = await say('the label of the vanilla whey changed', 'intern');
  expect(answer?.title).toMatch(/^Recorded: the label of Kitchen whey, vanilla changed/);
  expect(answer?.data.usedIn).toContain('oat-bars');
  const { error } = await say('made 40 oat bars');
  expect(error?.message).toMatch(/^The label of Kitchen whey, vanilla changed and nobody has checked it/);
  expect(error?.hint).toContain('checked the label of kitchen whey, vanilla');
  const form = await chat.forms.submit('batch', request('', 'staff'), {
    recipe: 'oat-bars',
    pieces: '40',
    day: '2026-11-02',
  });
  expect('faults' in form && form.faults.recipe).toMatch(/nobody has checked it.*checked the label/);
  expect(await held()).toEqual([]);
  expect((await say('made 40 oat bars', 'staff', 'T2')).error).toBeUndefined();

  const byIntern = await say('checked the label of kitchen whey, vanilla', 'intern');
  expect(byIntern.error?.code).toBe('not_allowed');
  nowMs += 60_000;
  const checked = await say('checked the label of kitchen whey, vanilla, may contain sesame');
  expect(checked.answer?.title).toMatch(/checked \(beyond the card: may contain sesame\)/);
  const notes = await store.kitchen.ledgers('T1').labelNotes();
  expect(notes.at(-1)).toMatchObject({ state: 'checked', who: 'ST-01', atMs: nowMs });
  expect((await say('made 40 oat bars')).error).toBeUndefined();
  const [holding] = await held();
  expect(holding?.batch.facts.advisory.map(({ allergen }) => allergen)).toContain('sesame');
});

test('what a new package names counts in allergen answers at once; undo takes the notice back', async () => {
  const before = await say('allergens in pretzels');
  expect(JSON.stringify(before.answer?.data)).not.toMatch(/"allergen":"peanut","status":"advisory"/);
  const { answer } = await say('the new pretzels say may contain peanut', 'intern');
  expect(answer?.data).toMatchObject({ state: 'changed', advisory: [{ allergen: 'peanut' }] });
  expect((await say('allergens in pretzels')).answer?.title).toMatch(/may contain.*peanut/);
  expect((await say('undo', 'intern')).answer?.title).toMatch(/^Undone: note of a label/);
  expect((await say('allergens in pretzels')).answer?.title).toBe(before.answer?.title);
});

test('a question about a swapped product is a notice, yet records nothing as named on its label', async () => {
  const { answer } = await say('supplier swapped the chocolate chips', 'intern');
  expect(answer?.data).toMatchObject({ state: 'changed', contains: [], advisory: [] });
  const athlete = await say('supplier swapped the chocolate chips', 'athlete');
  expect(athlete.answer?.data.state).toBeUndefined();
  expect(await store.kitchen.ledgers('T1').labelNotes()).toHaveLength(1);
});

test('a word that several packages go by holds back what uses any of them', async () => {
  const { answer } = await say('the new pretzels say may contain peanut', 'intern');
  expect(answer?.data.usedIn).toContain('seed-trail-mix');
  expect((await say('made 20 seed trail mix')).error?.message).toMatch(/nobody has checked it/);
  expect((await say('is the seed trail mix nut free')).answer?.title).toMatch(/peanut/);
  expect((await say('checked the label of pretzels, same as before')).error).toBeUndefined();
  expect((await say('made 20 seed trail mix')).error).toBeUndefined();
});

test('a label that was read clears no notice told of another package', async () => {
  await say('the label of the gluten-free rolled oats changed', 'intern');
  nowMs += 60_000;
  await say('checked the label of rolled oats, same as before');
  expect((await say('made 12 gluten-free almond apricot bars')).error?.message).toMatch(/nobody has checked/);
  await say('checked the label of gluten-free rolled oats, same as before');
  expect((await say('made 12 gluten-free almond apricot bars')).error).toBeUndefined();
});

test.each([
  [
    'the label of the sunflower butter now says may contain tree nuts',
    'sunflower-butter-nut-free',
    'advisory',
  ],
  ['sunflower butter label changed: may contain tree nuts', 'sunflower-butter-nut-free', 'advisory'],
  ['sunflower butter now contains almonds', 'sunflower-butter-nut-free', 'contains'],
  ['there is now almond in the sunflower butter', 'sunflower-butter-nut-free', 'contains'],
  ['the granola changed, has almonds now', 'granola', 'contains'],
])('"%s" is recorded of the package in use, never denied', async (text, food, kind) => {
  const { answer } = await say(text, 'intern');
  expect(answer?.title).toMatch(/^Recorded: the label of/);
  expect(answer?.title).not.toMatch(/listed/);
  const notes = await store.kitchen.ledgers('T1').labelNotes();
  expect(notes.map(({ foodId }) => foodId)).toContain(food);
  expect(notes[0]?.[kind as 'contains' | 'advisory']).toEqual([{ allergen: 'tree_nut' }]);
  expect(notes[0]?.state).toBe('changed');
});

test('a changed sunflower butter holds the bars of the card and shows in their answer', async () => {
  await say('sunflower butter label changed: may contain tree nuts');
  expect((await say('are the sunflower bars nut free')).answer?.title).toMatch(/may contain tree nuts/i);
  expect((await say('made 20 sunflower cranberry bars')).error?.message).toMatch(/nobody has checked it/);
});

test('a change told of a dish asks for the product, and keeps what was told', async () => {
  const { answer } = await say('the oat bars now contain almonds');
  expect(answer?.title).toBe('Which product changed in oat bars? Not recorded yet.');
  expect(await store.kitchen.ledgers('T1').labelNotes()).toEqual([]);
  const named = await say('honey');
  expect(named.answer?.data).toMatchObject({ foods: ['honey'], contains: [{ allergen: 'tree_nut' }] });
  expect((await say('the label changed')).answer?.title).toMatch(/^Which product changed/);
});

test('a question about a label records nothing, and nobody but the kitchen records one', async () => {
  await say('does the sunflower butter now contain almonds?');
  const { answer } = await say('sunflower butter now contains almonds', 'athlete');
  expect(answer?.title).toMatch(/go by the package and show it to staff/);
  expect(await store.kitchen.ledgers('T1').labelNotes()).toEqual([]);
});

test('a label told with a package of unknown weight is recorded, and the weight is asked', async () => {
  const { answer } = await say('received 2 bags of pretzels, label now says may contain peanut');
  expect(answer?.title).toMatch(/^How much pretzels, .* came\?/);
  expect((await say('made 20 seed trail mix')).error?.message).toContain('nobody has checked it');
  expect((await say('2 lb')).answer?.title).toContain('2 lb (907 g) received');
});
