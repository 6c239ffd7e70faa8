import { describe, expect, test } from 'vitest';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import { conflictsWith } from '../../src/nutrition/conflict.ts';
import { rawFoods } from '../../src/nutrition/raw-foods.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });
const { recipes, foods } = kitchen.book;

const ask = (text: string): Promise<Reply> => {
  const asker = { role: 'athlete', who: 'WP-07', workspace: 'local' } as const;
  const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
  return createChat(kitchen, () => 'id').ask(request);
};

describe('recipes', () => {
  test('lists every one of them', async () => {
    const { answer } = await ask('recipes');
    expect(answer?.data.recipes).toHaveLength(recipes.size);
    expect(answer?.title).toContain(String(recipes.size));
  });

  test('for a need lists only those whose every food is clear by its label, to the asker only', async () => {
    const { answer, slots } = await ask('nut-free recipes');
    expect(slots.avoid).toEqual(['peanut', 'tree_nut']);
    const listed = answer?.data.recipes as string[];
    expect(listed.length).toBeGreaterThan(0);
    for (const id of listed) {
      for (const { foodId } of recipes.get(id)?.lines ?? []) {
        const food = foods.get(foodId);
        expect(
          food && [conflictsWith(food, 'peanut'), conflictsWith(food, 'tree_nut')],
          `${id}: ${foodId}`,
        ).toEqual(['clear_by_label', 'clear_by_label']);
      }
    }
    expect(answer?.audience).toBe('asker');
    expect(answer?.cautions.join()).toContain('Cross-contact');
  });

  test('what no step cooks is cautioned about: raw egg, flour and meat, where the card is shown and scaled', async () => {
    const demo = [...recipes.values()].flatMap((recipe) => rawFoods(recipe, foods).map(({ id }) => id));
    expect(demo).toEqual([]);
    const oat = recipes.get('oat-bars');
    const line = oat?.lines[0];
    if (!oat || !line) throw new Error('no oat bars');
    const having = (foodId: string, written: string, more: Partial<typeof oat> = {}) => ({
      ...oat,
      ...more,
      lines: [...oat.lines, { ...line, foodId, written }],
    });
    const rawIn = (recipe: typeof oat): string[] => rawFoods(recipe, foods).map(({ id }) => id);
    const baked = { steps: [...oat.steps, { text: 'Bake 20 minutes in the oven.' }] };
    expect(rawIn(having('egg', '3 large eggs'))).toEqual(['egg']);
    expect(rawIn(having('egg', '3 large eggs', { steps: [] }))).toEqual(['egg']);
    expect(
      rawIn(having('flour', '1 cup flour', { steps: [{ text: 'Do not bake. Add baking powder.' }] })),
    ).toEqual(['flour']);
    expect(rawIn(having('ground-beef', '1 lb ground beef'))).toEqual(['ground-beef']);
    expect(rawIn(having('egg', '3 pasteurized eggs'))).toEqual([]);
    expect(rawIn(having('egg', '3 large eggs', baked))).toEqual([]);
    const here = {
      ...kitchen,
      book: { ...kitchen.book, recipes: new Map([...recipes, ['oat-bars', having('egg', '3 large eggs')]]) },
    };
    const asker = { role: 'staff', who: 'staff', workspace: 'local' } as const;
    for (const text of ['recipe for oat bars', '40 oat bars']) {
      const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
      const { answer } = await createChat(here, () => 'id').ask(request);
      expect(answer?.cautions[0]).toContain('No step of Oat bars cooks the raw egg, whole');
    }
  });

  test('a card without a version says nothing of one', async () => {
    const oat = recipes.get('oat-bars');
    if (!oat) throw new Error('no oat bars');
    const undated = new Map([...recipes, ['oat-bars', { ...oat, version: '' }]]);
    const here = { ...kitchen, book: { ...kitchen.book, recipes: undated } };
    const asker = { role: 'staff', who: 'staff', workspace: 'local' } as const;
    const read = async (text: string): Promise<string> => {
      const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
      const { answer } = await createChat(here, () => 'id').ask(request);
      return answer ? plainText(answer, 200) : '';
    };
    expect(await read('recipe for oat bars')).toMatch(/^Oat bars: makes(?!.*Version of)/s);
    expect(await read('macros oat bars')).toMatch(/12 bars from one 8 x 8 in pan\. /);
  });

  test('shows one as a card with its control points', async () => {
    const { answer } = await ask('recipe for oat bars');
    expect(answer?.title).toBe('Oat bars: makes 12 bars.');
    expect(JSON.stringify(answer?.sections)).toContain('Control point: ');
    expect(answer?.data.ingredients).toHaveLength(recipes.get('oat-bars')?.lines.length ?? 0);
  });
});
