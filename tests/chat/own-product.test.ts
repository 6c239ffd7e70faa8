import { describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });

const answerTo = async (text: string) => {
  const asker = { role: 'staff', who: 'U1', workspace: 'local' } as const;
  const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
  const { answer } = await createChat(kitchen, () => 'id').ask(request);
  return answer;
};

describe('a plain food of which the kitchen has a labelled package', () => {
  test.each([
    ['is turkey gluten free', 'turkey-slices-kitchen'],
    ['does hummus have sesame', 'hummus-classic'],
    ['do the pretzels have milk', 'pretzels-nut-free'],
  ])('%j is answered from that label', async (text, food) => {
    expect((await answerTo(text))?.data).toMatchObject({ food });
  });

  test('a recipe with the plain one is named beside it, with what holds there', async () => {
    expect((await answerTo('do the pretzels have milk'))?.title).toMatch(
      /^No milk listed in Pretzel sticks, .* Not the same in Travel trail mix: .*may contain milk/,
    );
  });

  test('without such a package it stays the plain food', async () => {
    expect((await answerTo('is homemade hummus gluten free'))?.data).toMatchObject({
      food: 'hummus-homemade',
    });
  });

  test('its label is that of the package', async () => {
    expect((await answerTo('nutrition label hummus'))?.title).toContain('label figures of Kitchen hummus');
  });
});

describe('a label', () => {
  test.each([
    ['label for cherry crunch', 'cherry crunch'],
    ['nutrition label oat crunch', 'oat crunch'],
  ])('%j asks back about a name that is not exactly known', async (text, name) => {
    const answer = await answerTo(text);
    expect(answer?.title).toMatch(`I do not have "${name}" here`);
    expect(answer?.next[0]?.says).toMatch(/^label for /);
  });

  test.each([
    ['nutrition label oat bars cut into 8', 'Oat bars'],
    ['label for 2 tbsp peanut butter + banana', 'Peanut butter, smooth + Banana'],
  ])('%j is made', async (text, name) => {
    expect((await answerTo(text))?.title).toContain(`label figures of ${name}`);
  });
});

describe('a snack somebody may eat', () => {
  test('is an allergen question, and an emergency once it was eaten', async () => {
    expect(
      (await answerTo('can the cherry bars be eaten by someone with a tree nut allergy'))?.title,
    ).toMatch('contains tree nuts');
    expect((await answerTo('the bar was eaten by someone with a nut allergy'))?.title).toMatch('Call 911');
  });

  test('"whats in it, any nuts" gives the verdict on nuts', async () => {
    expect((await answerTo('whats in the trail mix, any nuts'))?.title).toMatch(
      /^Travel trail mix: contains peanut .* Contains tree nuts/,
    );
  });
});

describe('an ingredient without an amount in a typed list', () => {
  test.each(['1 egg, salt', '1 egg\nsalt', 'macros of salt, 1 egg'])(
    '%j says what it left out',
    async (text) => {
      const answer = await answerTo(text);
      expect(answer?.title).toMatch(/Egg, whole, not counting "salt"$/);
      expect(JSON.stringify(answer?.sections)).toContain('No amount for salt: left out.');
    },
  );
});
