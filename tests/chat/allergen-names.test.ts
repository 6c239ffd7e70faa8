import { describe, expect, test } from 'vitest';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { freeWords } from '../../src/chat/need-words.ts';
import { doubtfulName } from '../../src/chat/reading/doubtful-name.ts';
import { read } from '../../src/chat/reading/read.ts';
import { NEEDS, type Need } from '../../src/nutrition/allergens.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });
const { book } = kitchen;

const ask = (text: string): Promise<Reply> => {
  const asker = { role: 'athlete', who: 'WP-07', workspace: 'local' } as const;
  const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
  return createChat(kitchen, () => 'id').ask(request);
};
const titleOf = async (text: string) => (await ask(text)).answer?.title ?? '';

describe('what is asked about must be known exactly', () => {
  test.each([
    ['is the tropical smoothie nut free', 'tropical smoothie'],
    ['allergens in pumpkin bread', 'pumpkin bread'],
    ['is the cherry pie nut free', 'cherry pie'],
  ])('%j is not answered for the part that is known', async (text, strange) => {
    const { answer } = await ask(text);
    expect(answer?.title).toMatch(
      `I do not have "${strange}" here, so I cannot say what is in it. Did you mean`,
    );
  });

  test.each([
    'are the oat bars nut free',
    'hey quick q, can WP-07 eat the parfait, coeliac',
    'is the homemade granola nut free',
    'can i eat the cherry bars im allergic to peanuts',
    'are the almond bars ok for me with a severe nut allergy',
    'is the smoothie ok, milk allergy',
    'allergens oat bars',
  ])('%j names what is known', (text) => {
    expect(doubtfulName(text, book, 0)).toBeUndefined();
  });

  test.each([
    'does pesto have nuts',
    'is xanthan dust nut free',
    'are the walnut bars nut free',
    'is the pumpkin soup nut free',
    'allergens in oat crunch',
    'is the almond joyful bar nut free',
    'can I eat the cherry granola bars',
    'allergens in peanut crunch bars',
    'allergens trail mx',
    'allergens in chocolat dat brs',
    'can i eat the choco bars, peanut allergy',
    'oat bars with zorblat sauce, nut free?',
    'out of oat crunch',
    'nut free version of oat crunch',
  ])('nothing is said to be free of anything in %j', async (text) => {
    const { answer, error } = await ask(text);
    const data = JSON.stringify(answer?.data ?? {});
    expect(answer?.title ?? error?.message).toContain('I cannot say what is in it');
    expect(JSON.stringify(answer?.sections ?? error?.hint)).toContain('Read its package');
    expect(data).not.toMatch(/"contains"|"avoid"/);
  });

  test('a question back offers what it may be, as next steps that are read', async () => {
    const { answer } = await ask('is the cherry crunch nut free');
    expect(answer?.next.map((step) => step.says)).toContain('is Cherry oat bars nut-free');
    expect((await ask('is Cherry oat bars nut-free')).answer?.data.recipe).toBe('cherry-oat-bars');
  });

  test.each([
    ['allergens in chery bars', 'cherry-oat-bars'],
    ['allergens in cherry bras', 'cherry-oat-bars'],
    ['Allergens in CHERRY BAR?', 'cherry-oat-bars'],
  ])('one letter wrong, where only one name is near, is put right: %s', async (text, recipe) => {
    expect((await ask(text)).answer?.data.recipe).toBe(recipe);
  });

  test('a name nobody knows forgets what was spoken of before', async () => {
    const chat = createChat(kitchen, () => 'id');
    const asker = { role: 'athlete', who: 'WP-07', workspace: 'local' } as const;
    const say = (text: string) =>
      chat.ask({ text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() });
    await say('allergens in the oat bars');
    await say('allergens in oat crunch');
    expect((await say('nut free?')).answer?.data.recipe).toBeUndefined();
  });
});

describe('the line that answers', () => {
  test('names every need that something speaks against', async () => {
    expect(await titleOf('is peanut butter nut free')).toBe(
      'Peanut butter, smooth: contains peanut. May contain tree nuts by its label.',
    );
  });

  test('leaves a "may contain" to the dietitian', async () => {
    expect(await titleOf('can i eat the cherry bars, peanut allergy')).toBe(
      'Cherry oat bars: may contain peanut (Almond butter, no salt). Ask the dietitian before eating it.',
    );
  });

  test('answers for what is avoided and stands on no list', async () => {
    expect(await titleOf("i'm allergic to bananas, is the smoothie ok")).toBe(
      'Berry recovery smoothie has Banana in it.',
    );
    expect(await titleOf('kiwi allergy')).toContain('packages are not checked');
    expect(await titleOf('strawberry allergy')).toMatch(/^Strawberries: in \d+ of \d+ recipes/);
  });

  test('says that halal is more than no pork', async () => {
    const { answer } = await ask('are the rolls halal');
    expect(answer?.cautions.join()).toContain('Checked for pork only');
  });
});

describe('a recipe asked for with a need', () => {
  test('says how it stands to the need first, to the asker alone', async () => {
    const { answer } = await ask('nut free trail mix');
    expect(answer?.title).toMatch(
      /^No peanut or tree nuts listed in Seed trail mix, by recipe and labels; kitchen not checked/,
    );
    expect(answer?.audience).toBe('asker');
    expect(answer?.cautions.join()).toContain('not checked');
  });

  test('is answered where every package in it has a label on file', async () => {
    expect(await titleOf('are the rolls nut free')).toMatch(
      /^No peanut or tree nuts listed in Turkey hummus rolls/,
    );
    expect(await titleOf('allergens in the rolls')).toMatch(
      /^Turkey hummus rolls: contains milk, wheat and sesame\./,
    );
  });

  test('and any card says what it contains', async () => {
    const { answer } = await ask('recipe for oat bars');
    expect(JSON.stringify(answer?.sections)).toContain('CONTAINS milk and peanut. May contain');
  });
});

describe('a follow-up', () => {
  const inOneConversation = async (...texts: readonly string[]): Promise<string> => {
    const chat = createChat(kitchen, () => 'id');
    const asker = { role: 'athlete', who: 'WP-07', workspace: 'local' } as const;
    let title = '';
    for (const text of texts) {
      const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
      title = (await chat.ask(request)).answer?.title ?? '';
    }
    return title;
  };

  test('about "the cherry ones" is about the bars, never about cherries', async () => {
    expect(await inOneConversation('can i eat the oat bars, peanut allergy', 'and the cherry ones')).toBe(
      'Cherry oat bars: may contain peanut (Almond butter, no salt). Ask the dietitian before eating it.',
    );
  });

  test('that names the recipe keeps what was out', async () => {
    expect(await inOneConversation('out of milk', 'in the smoothie')).toMatch(/^Use .* for .* Milk, 2 %\.$/);
  });
});

test('what is not known through the same label is said once', async () => {
  const { answer } = await ask('allergens in homemade hummus');
  const rows = answer?.sections.flatMap((section) => (section.kind === 'table' ? section.rows : [])) ?? [];
  expect(rows).toHaveLength(2);
  expect(rows[1]?.[0]).toContain('fish, crustacean shellfish, tree nuts');
  expect(answer?.data.notKnown).toHaveLength(8);
});

describe('words on a button', () => {
  const pairs = NEEDS.filter((need) => need !== 'mollusc').map((need): [string, Need[]] => [need, [need]]);
  test.each([...pairs, ['nuts', ['peanut', 'tree_nut']], ['several', ['gluten', 'animal']]] as [
    string,
    Need[],
  ][])('are read back as the same need: %s', (_, needs) => {
    const context = { book, conversation: {}, nowMs: 0 };
    const version = read(`${freeWords(needs)} version of Oat bars`, context);
    expect(version.intent).toBe('swap');
    expect([...(version.slots.avoid as string[])].sort()).toEqual([...needs].sort());
    const list = read(`${freeWords(needs)} recipes`, context);
    expect(list.intent).toBe('recipes');
    expect([...(list.slots.avoid as string[])].sort()).toEqual([...needs].sort());
  });
});
