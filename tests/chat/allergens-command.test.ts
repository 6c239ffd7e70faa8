import { describe, expect, test } from 'vitest';
import { allergens } from '../../src/chat/commands/allergens/index.ts';
import { askCommand, shown } from '../helpers/pantry-kitchen.ts';

const ask = (slots: Parameters<typeof askCommand>[1], options?: Parameters<typeof askCommand>[2]) =>
  askCommand(allergens, slots, options);

describe('allergens of a recipe', () => {
  test('an athlete is told what is in it, that the kitchen is not checked, and is asked which allergy', async () => {
    const { answer, conversation } = await ask({ recipe: 'test-oat-bar' }, { role: 'athlete' });
    expect(answer.title).toBe(
      'Test oat bar: contains milk, peanut and soy. Which allergy or need do you have?',
    );
    expect(answer.audience).toBe('asker');
    expect(answer.cautions[0]).toContain('not checked');
    expect(conversation?.question).toMatchObject({ slot: 'avoid' });
  });

  test('with a need the verdict comes first, and why', async () => {
    const { answer } = await ask({ recipe: 'test-oat-bar', avoid: ['peanut', 'tree_nut'] });
    expect(answer.title).toBe('Test oat bar: contains peanut (Peanut butter, smooth).');
    expect(answer.data).toMatchObject({ verdict: 'conflict', crossContact: 'not_checked' });
  });

  test('nothing found is said as what was read, never as a promise', async () => {
    const { answer } = await ask({ recipe: 'test-oat-bar', avoid: ['fish'] });
    expect(answer.title).toContain('No fish listed in Test oat bar');
    expect(answer.title).toContain('kitchen not checked');
    expect(shown(answer).toLowerCase()).not.toMatch(/\bsafe\b/);
  });

  test('a milk allergy and lactose intolerance get different answers for the same cup', async () => {
    const milk = await ask({ ingredient: 'milk-2-', avoid: ['milk'] });
    const lactose = await ask({ ingredient: 'milk-2-', avoid: ['lactose'] });
    expect(milk.answer.title).toContain('milk');
    expect(lactose.answer.title).toContain('lactose');
    expect(milk.answer.cautions.join()).toContain('epinephrine');
    expect(lactose.answer.cautions.join()).not.toContain('epinephrine');
  });

  test('plain oats are named as the reason against gluten', async () => {
    const { answer } = await ask({ recipe: 'test-oat-bar', avoid: ['gluten'] });
    expect(answer.title).toContain('not for avoiding gluten: Rolled oats (no gluten-free label)');
  });

  test('the EU list names oats as a cereal with gluten', async () => {
    const { answer } = await ask({ recipe: 'test-oat-bar' }, { list: 'eu' });
    expect(answer.title).toContain('cereals with gluten');
  });

  test('leans on the recipe this conversation is about, and asks when there is none', async () => {
    const leaning = await ask({ avoid: ['milk'] }, { conversation: { recipeId: 'test-oat-bar' } });
    expect(leaning.answer.data.recipe).toBe('test-oat-bar');
    const asking = await ask({});
    expect(asking.answer.title).toBe('Which recipe?');
    expect(asking.conversation?.question?.slot).toBe('recipe');
  });

  test('a changed product reopens the check', async () => {
    const { answer } = await ask({ recipe: 'test-oat-bar', changed_product: 'chips' });
    expect(answer.cautions.join()).toContain('reopens');
  });

  test('an unknown recipe and an unknown food say what there is', async () => {
    await expect(ask({ recipe: 'lasagna' })).rejects.toMatchObject({ code: 'unknown_recipe' });
    const { answer } = await ask({ ingredient: 'hony' });
    expect(answer).toMatchObject({
      title: expect.stringContaining('Did you mean Honey'),
      data: { asks: 'name', name: 'hony' },
    });
  });
});

describe('allergens of everything', () => {
  test('lists recipes by how they stand to the need', async () => {
    const { answer } = await ask({ scope: 'all_recipes', avoid: ['peanut'] }, { role: 'athlete' });
    expect(answer.data).toMatchObject({ conflict: ['test-oat-bar'], clear: [] });
    expect(answer.title).toContain('not checked');
  });

  test('without a need is a table of what each contains', async () => {
    const { answer } = await ask({ scope: 'all_recipes' });
    expect(shown(answer)).toContain('milk, peanut and soy');
  });
});
