import { describe, expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/book/settings-file.ts';
import type { Answer } from '../../src/chat/answer.ts';
import { macros } from '../../src/chat/commands/macros/index.ts';
import type { ConversationState } from '../../src/chat/conversation.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { Slots } from '../../src/chat/slots.ts';
import { noMemory } from '../../src/kitchen/no-memory.ts';
import type { Book } from '../../src/nutrition/book.ts';
import {
  foodOf,
  foodsOf,
  lineOf,
  milk2,
  oats,
  peanutButter,
  recipeOf,
  wheyPowder,
} from '../helpers/foods.ts';

const banana = foodOf(
  'banana',
  { energyKcal: 89, proteinG: 1.09, fatG: 0.33, carbohydrateG: 22.84, sodiumMg: 1 },
  { roles: ['color'], portions: [{ unit: 'medium', massG: 118 }] },
);
const scooped = { measuredBy: 'scooped', unit: 'scoop' } as const;
const oatBars = recipeOf(
  'oat-bars',
  [lineOf(oats, 400), lineOf(wheyPowder, 150, scooped), lineOf(peanutButter, 150)],
  {
    title: 'Oat bars',
    pan: { id: 'square', name: '8 x 8 pan', lengthIn: 8, widthIn: 8, depthIn: 2 },
  },
);
const milkCups = recipeOf('milk-cups', [lineOf(milk2, 800)], {
  title: 'Milk cups',
  pieceUnit: 'cup',
  yieldPieces: 4,
});
const book: Book = {
  settings: { ...DEFAULT_SETTINGS, caloriesForAthletes: false },
  foods: foodsOf(oats, wheyPowder, peanutButter, milk2, banana),
  recipes: new Map([oatBars, milkCups].map((recipe) => [recipe.id, recipe])),
  problems: [],
};

async function ask(
  slots: Slots,
  {
    role = 'staff',
    conversation = {},
    kitchenBook = book,
    text = '',
    isPrivate = true,
  }: {
    text?: string;
    isPrivate?: boolean;
    role?: PersonRole;
    conversation?: ConversationState;
    kitchenBook?: Book;
  } = {},
) {
  const asker = { role, who: 'WP-07', workspace: 'test' };
  const request = { text, asker, conversation: 'c', isPrivate, nowMs: 0 };
  return macros.answers({
    slots,
    request,
    conversation,
    kitchen: { book: kitchenBook, clock: { nowMs: () => 0 }, ...noMemory },
  });
}
const answerTo = async (...args: Parameters<typeof ask>): Promise<Answer> => (await ask(...args)).answer;
const wordsOf = (answer: Answer): string => JSON.stringify([answer.title, answer.sections, answer.next]);

const wholeProteinG = 4 * 13.15 + 1.5 * 78.13 + 1.5 * 22.21;

describe('macros', () => {
  test('puts the figure first, with its range, and follows the cut', async () => {
    const answer = await answerTo({ recipe: 'oat bar', pieces: 10 });
    expect(answer.title).toMatch(
      /^20 g protein \(\d+ to \d+ by cup and spoon\), \d+ kcal .* in a bar: Oat bars$/,
    );
    expect(answer.data).toMatchObject({ recipeId: 'oat-bars', pieces: 10, massG: 70 });
    expect(answer.data.proteinG).toBeCloseTo(wholeProteinG / 10, 3);
    expect(wordsOf(answer)).toContain('10 bars from one 8 x 8 pan');
    expect(wordsOf(answer)).toContain('USDA SR28 (3 foods)');
  });

  test('names the food behind "at least", and how much of the weight is known', async () => {
    const answer = await answerTo({ recipe: 'oat bars', nutrient: ['leucine'] });
    expect(answer.title).toContain('at least');
    expect(wordsOf(answer)).toContain(
      'No leucine figure for whey powder, peanut butter; known for 57 % of the weight.',
    );
    expect(answer.data.atLeast).toEqual({ leucineG: ['whey_powder', 'peanut_butter'] });
  });

  test('tells 100 g, the batch, several pieces or a weight when asked', async () => {
    const massOf = async (slots: Slots) => (await answerTo({ recipe: 'oat bars', ...slots })).data.massG;
    expect(await massOf({ per: '100g' })).toBe(100);
    expect(await massOf({ per: 'batch' })).toBe(700);
    expect(await massOf({ quantity: 2, unit: 'bar' })).toBe(175);
    expect(await massOf({ portion: 50, portion_unit: 'g' })).toBe(50);
  });

  test('adds up a typed list and says how each amount was read', async () => {
    const answer = await answerTo({ ingredient: '2 tbsp peanut butter + banana' });
    expect(answer.data.energyKcal).toBeCloseTo(2 * 95.68 + 1.18 * 89, 2);
    expect(wordsOf(answer)).toContain('no amount was written, so one is counted');
  });

  test('cuts a typed list where it says what it makes', async () => {
    const answer = await answerTo({ ingredient: '2 cups rolled oats, 1/2 cup milk 2 percent makes 12' });
    expect(answer.data).toMatchObject({ pieces: 12, per: 'a piece' });
    expect(answer.data.massG).toBeCloseTo((162 + 122) / 12, 3);
  });

  test('counts every food of a typed list, though the slots hold only the first', async () => {
    const text = 'macros 2 cups rolled oats, 1 cup peanut butter and a banana makes 10';
    const first = await ask({ ingredient: 'rolled_oats', portion: 2, portion_unit: 'cup' }, { text });
    expect(first.answer.data).toMatchObject({ pieces: 10 });
    expect(first.answer.data.massG).toBeCloseTo((162 + 256 + 118) / 10, 3);
    const cut = await answerTo(
      { pieces: 20 },
      { text: 'cut into 20', conversation: first.conversation ?? {} },
    );
    expect(cut.data.massG).toBeCloseTo((162 + 256 + 118) / 20, 3);
  });

  test('loses no line of a typed list that holds something unknown', async () => {
    const text = 'macros 2 cups rolled oats, 1 cup unobtainium';
    const answer = await answerTo({ ingredient: 'rolled_oats', portion: 2, portion_unit: 'cup' }, { text });
    expect(answer.title).toContain('not counting "1 cup unobtainium"');
  });

  test('reads an amount from its slots', async () => {
    const answer = await answerTo({ ingredient: 'peanut butter', portion: 2, portion_unit: 'tbsp' });
    expect(answer.data.massG).toBe(32);
  });

  test('says in the title what it could not count', async () => {
    const answer = await answerTo({ ingredient: '1 cup oats, 1 cup unobtainium' });
    expect(answer.title).toContain('not counting "1 cup unobtainium"');
    expect(answer.data.notCounted).toEqual([{ written: '1 cup unobtainium', reason: 'unknown_food' }]);
  });

  test('adds and leaves out, and never passes over what it cannot add', async () => {
    const answer = await answerTo({ recipe: 'oat bars', add: ['100 g banana'], remove: ['peanut butter'] });
    expect(answer.data.proteinG).toBeCloseTo((4 * 13.15 + 1.5 * 78.13 + 1.09) / 8, 3);
    expect(wordsOf(answer)).toContain('Left out: peanut butter');
    await expect(ask({ recipe: 'oat bars', add: ['1 cup unobtainium'] })).rejects.toMatchObject({
      code: 'unknown_food',
    });
  });

  test('says whether a target holds by cup, or only on the scale', async () => {
    const target = (amount: number) => [{ nutrient: 'protein', amount, unit: 'g' }];
    const sure = await answerTo({ recipe: 'oat bars', target: target(20) });
    expect(sure.data.targets).toEqual([
      { nutrient: 'protein', bound: 'least', amount: 20, byCup: 'yes', weighed: 'yes' },
    ]);
    const close = await answerTo({ recipe: 'oat bars', pieces: 10, target: target(19.5) });
    expect(close.data.targets).toMatchObject([{ byCup: 'unsure', weighed: 'yes' }]);
    expect(wordsOf(close)).toContain('yes if weighed');
    const inMg = await answerTo({
      recipe: 'oat bars',
      target: [{ nutrient: 'sodium', amount: 1, unit: 'g' }],
    });
    expect(inMg.data.targets).toMatchObject([{ nutrient: 'sodium', bound: 'most', amount: 1000 }]);
  });

  test('sets two recipes, two foods or two cuts side by side', async () => {
    const both = await answerTo({ compare: ['oat bars', 'milk cups'] });
    expect(both.title).toBe('25 g protein in a bar of Oat bars, 6.6 g in a cup of Milk cups');
    const foods = await answerTo({ compare: ['peanut butter', 'rolled oats'] });
    expect(foods.data.compared).toMatchObject([{ proteinG: 22.21 }, { proteinG: 13.15 }]);
    const cuts = await answerTo({ recipe: 'oat bars', pieces: 10, pieces_was: 8 });
    expect(cuts.data.compared).toMatchObject([{ massG: 87.5 }, { massG: 70 }]);
  });

  test('prints label figures in the order of the regulation, unknown ones as such', async () => {
    const answer = await answerTo({ recipe: 'oat bars', output: 'label' });
    const names = (answer.data.label as { name: string }[]).map((row) => row.name);
    expect(names.slice(0, 4)).toEqual(['Calories', 'Total fat', 'Saturated fat', 'Trans fat']);
    expect(answer.data.label).toContainEqual(
      expect.objectContaining({ nutrient: 'proteinG', shown: 25, lessThan: false }),
    );
    expect(answer.attachments?.[0]?.content).toMatch(/^Oat bars\nServing: a bar \(88 g\)\n/);
    expect(answer.attachments?.[0]?.content.split('\n').every((line) => line.length <= 40)).toBe(true);
  });
});

describe('a follow-up', () => {
  test('keeps the recipe and takes what is new', async () => {
    const first = await ask({ recipe: 'oat bars', nutrient: ['sodium'] });
    const { conversation = {} } = first;
    expect(conversation.recipeId).toBe('oat-bars');
    const cut = await ask({ pieces: 12 }, { conversation });
    expect(cut.answer.data).toMatchObject({ recipeId: 'oat-bars', pieces: 12 });
    expect(cut.answer.title).toContain('protein');
    const label = await answerTo({ output: 'label' }, { conversation: cut.conversation ?? {} });
    expect(label.data).toMatchObject({ servings: 12 });
  });

  test('leans on a recipe spoken of in another command', async () => {
    const answer = await answerTo({ nutrient: ['protein'] }, { conversation: { recipeId: 'oat-bars' } });
    expect(answer.data.recipeId).toBe('oat-bars');
  });

  test('without anything to lean on is answered by one short question', async () => {
    const { answer, conversation } = await ask({ nutrient: ['protein'] });
    expect(answer.title).toBe('Of which recipe or food?');
    expect(conversation?.question).toMatchObject({ slot: 'recipe', reading: { intent: 'macros' } });
  });
});

test('foods named without amounts are all counted or said not to be', async () => {
  const answer = await answerTo({ ingredient: 'banana' }, { text: 'macros banana and peanut butter' });
  expect(answer.title).toMatch(/banana, not counting "peanut butter"$/);
});

describe('quiet numbers', () => {
  const hasEnergy = (answer: Answer) => /kcal|calories|energy/i.test(JSON.stringify(answer));

  test.each<Slots>([
    { recipe: 'oat bars' },
    { recipe: 'oat bars', output: 'label' },
    { compare: ['oat bars', 'milk cups'] },
    { ingredient: '2 tbsp peanut butter + banana' },
    {
      recipe: 'oat bars',
      target: [{ nutrient: 'energy', amount: 250, unit: 'kcal' }],
      nutrient: ['protein'],
    },
  ])('an athlete sees no calories anywhere: %j', async (slots) => {
    expect(hasEnergy(await answerTo(slots, { role: 'athlete' }))).toBe(false);
    expect(JSON.stringify(await answerTo(slots, { role: 'staff', isPrivate: false }))).not.toMatch(
      /kcal|"energy/i,
    );
    expect(hasEnergy(await answerTo(slots, { role: 'staff' }))).toBe(true);
  });

  test('an athlete who asks for them is told kindly who can help', async () => {
    const answer = await answerTo({ recipe: 'oat bars', nutrient: ['calories'] }, { role: 'athlete' });
    expect(answer.title).toContain(book.settings.contacts.dietitian);
    expect(answer.title).not.toMatch(/\d/);
  });

  test.each(['staff', 'intern'] as const)(
    '%s who ask where others read along are told where they are',
    async (role) => {
      const public_ = { role, isPrivate: false };
      expect(wordsOf(await answerTo({ recipe: 'oat bars' }, public_))).toContain(
        'ask me in a direct message',
      );
      const only = await answerTo({ recipe: 'oat bars', nutrient: ['calories'] }, public_);
      expect(only.title).toBe('Calories stay out of channels; ask me in a direct message.');
      const both = await answerTo({ compare: ['oat-bars', 'milk-cups'], nutrient: ['calories'] }, public_);
      expect(both.next[0]?.says).toBe('compare Oat bars and Milk cups');
    },
  );

  test('an athlete sees them where the dietitian has allowed it', async () => {
    const open = { ...book, settings: { ...book.settings, caloriesForAthletes: true } };
    expect(hasEnergy(await answerTo({ recipe: 'oat bars' }, { role: 'athlete', kitchenBook: open }))).toBe(
      true,
    );
  });
});

describe('what is not there', () => {
  test.each<[slots: Slots, code: string]>([
    [{ recipe: 'zebra loaf' }, 'unknown_recipe'],
    [{ ingredient: 'unobtainium' }, 'unknown_food'],
    [{ recipe: 'oat bars', nutrient: ['vibes'] }, 'bad_option'],
    [{ recipe: 'oat bars', pieces: 0 }, 'bad_quantity'],
    [{ recipe: 'oat bars', pieces: 2.5 }, 'bad_quantity'],
    [{ recipe: 'oat bars', pieces: 1e12 }, 'bad_quantity'],
    [{ ingredient: 'milk', portion: Number.POSITIVE_INFINITY, portion_unit: 'cup' }, 'bad_quantity'],
    [{ recipe: 'oat bars', quantity: -1, unit: 'bar' }, 'bad_quantity'],
    [{ recipe: 'oat bars', quantity: 0, unit: 'bar' }, 'bad_quantity'],
    [{ compare: ['oat bars'] }, 'needs_more'],
  ])('%j is a problem that says what to write', async (slots, code) => {
    await expect(ask(slots)).rejects.toMatchObject({ code, hint: expect.stringMatching(/\w/) });
  });

  test('is told with what comes near', async () => {
    await expect(ask({ recipe: 'oat bras' })).rejects.toMatchObject({
      hint: expect.stringContaining('Oat bars'),
    });
    await expect(ask({ ingredient: '1 cup penut buter' })).rejects.toMatchObject({
      hint: expect.stringContaining('peanut butter'),
    });
  });
});
