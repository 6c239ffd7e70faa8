import { describe, expect, test } from 'vitest';
import { swap } from '../../src/chat/commands/swap/index.ts';
import { askCommand, shown } from '../helpers/pantry-kitchen.ts';

const ask = (slots: Parameters<typeof askCommand>[1], options?: Parameters<typeof askCommand>[2]) =>
  askCommand(swap, slots, options);
const inBar = { conversation: { recipeId: 'test-oat-bar' } };

describe('a swap by need', () => {
  test('says the amounts first, then reason, effects and figures', async () => {
    const { answer } = await ask({ avoid: ['peanut', 'tree_nut'] }, inBar);
    expect(answer.title).toContain('Sunflower seed butter for');
    expect(shown(answer)).toContain('Takes out peanut.');
    expect(shown(answer)).toContain('some people avoid it; ask');
    expect(answer.data).toMatchObject({ offers: [{ stillThere: [], allergensLost: ['peanut'] }] });
  });

  test('labelled oats carry the avenin note', async () => {
    const { answer } = await ask({ avoid: ['gluten'] }, inBar);
    expect(answer.cautions.join()).toContain('avenin');
  });

  test('an athlete sees no calories, staff do', async () => {
    const athlete = await ask({ avoid: ['gluten'] }, { ...inBar, role: 'athlete' });
    const staff = await ask({ avoid: ['gluten'] }, inBar);
    expect(shown(athlete.answer) + JSON.stringify(athlete.answer.data)).not.toMatch(/kcal/i);
    expect(shown(staff.answer)).toMatch(/kcal/i);
    const aloud = await ask({ avoid: ['gluten'] }, { ...inBar, isPrivate: false });
    expect(shown(aloud.answer) + JSON.stringify(aloud.answer.data)).not.toMatch(/kcal/i);
  });

  test('says which ingredient blocks when nothing serves', async () => {
    const { answer } = await ask({ avoid: ['peanut', 'tree_nut', 'sesame', 'added_sugar'] }, inBar);
    expect(answer.title).toMatch(/nothing fits for .*Honey\.$/);
    expect(answer.data).toMatchObject({ offers: [] });
  });

  test('is only for the asker', async () => {
    expect((await ask({ avoid: ['milk'] }, inBar)).answer.audience).toBe('asker');
  });
});

describe('a swap by ingredient', () => {
  test('finds the line that "milk" means in the recipe', async () => {
    const { answer, conversation } = await ask({ ingredient: 'milk', recipe: 'test-oat-bar' });
    expect(answer.title).toContain('for 1/2 cup (120 g) Milk, 2 %');
    expect(conversation?.recipeId).toBe('test-oat-bar');
  });

  test('works without a recipe, for a cup', async () => {
    const { answer } = await ask({ ingredient: 'honey', avoid: ['animal'] });
    expect(answer.title).toContain('1 1/2 cups (463 g) Maple syrup for 1 cup (339 g) Honey');
    expect(answer.data).toMatchObject({ ingredient: 'honey', recipe: null });
  });

  test('a recipe without that ingredient says what it has', async () => {
    await expect(ask({ ingredient: 'walnuts', recipe: 'test-oat-bar' })).rejects.toMatchObject({
      code: 'not_found',
      hint: expect.stringContaining('Honey'),
    });
  });
});

describe('a replacement that was named', () => {
  test('almond butter for a nut-free ask is refused with the reason, and another is shown', async () => {
    const { answer } = await ask({
      ingredient: 'peanut-butter-smooth',
      replacement: 'almond butter',
      avoid: ['peanut', 'tree_nut'],
      recipe: 'test-oat-bar',
    });
    expect(answer.title).toBe(
      'With that it is not nut-free. Test oat bar: contains tree nuts (Almond butter).',
    );
    expect(answer.data).toMatchObject({ offers: [{ swaps: [{ to: 'sunflower-seed-butter' }] }] });
  });

  test('a powder that is not approved is said so', async () => {
    const { answer } = await ask({
      ingredient: 'whey',
      replacement: 'shelf-pea-powder-not-approved',
      recipe: 'test-oat-bar',
    });
    expect(shown(answer)).toContain('not approved by the dietitian');
  });

  test('what cannot do the work is said so', async () => {
    const { answer } = await ask({ ingredient: 'whey', replacement: 'honey', recipe: 'test-oat-bar' });
    expect(answer.title).toContain('does not do the work');
  });
});

test('asks one short question when nothing was named', async () => {
  expect((await ask({})).answer.title).toBe('Which ingredient, in which recipe?');
  const forNeed = await ask({ avoid: ['milk'] });
  expect(forNeed.answer.title).toBe('0 of 1 recipes list no milk; the kitchen itself is not checked.');
  expect(shown(forNeed.answer)).toContain('dairy-free version of ...');
  expect(forNeed.conversation?.question).toMatchObject({ slot: 'recipe', reading: { intent: 'swap' } });
  expect((await ask({}, inBar)).answer.title).toContain('which ingredient is out');
});
