import { describe, expect, test } from 'vitest';
import { type Chat, createChat, type Reply } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const NOW_MS = Date.UTC(2026, 10, 24, 15);
const kitchen = await openKitchen({ nowMs: () => NOW_MS });

const newChat = (): Chat =>
  createChat(kitchen, (error) => {
    throw error;
  });

async function ask(
  text: string,
  {
    role = 'staff',
    isPrivate = true,
    chat = newChat(),
  }: { role?: PersonRole; isPrivate?: boolean; chat?: Chat } = {},
): Promise<Reply> {
  const asker = { role, who: 'ST-01', workspace: 'demo' } as const;
  return chat.ask({ text, asker, conversation: 'bench', isPrivate, nowMs: NOW_MS });
}

const dataOf = ({ answer }: Reply): unknown => answer?.data ?? {};

async function told(text: string, how: Parameters<typeof ask>[1] = {}): Promise<string> {
  const { answer, error } = await ask(text, how);
  if (!answer) throw new Error(error?.message);
  return plainText(answer).replace(/\s+/g, ' ');
}

describe('balance', () => {
  test('answers with the figures first, then what was and what is now', async () => {
    const reply = await ask('oat bars at least 20 g protein under 250 kcal');
    expect(reply.intent).toBe('balance');
    expect(reply.answer?.title).toMatch(
      /^20(?:\.\d)? g protein and 2[45]\d kcal a bar, Oat bars: .*6 scoops → /,
    );
    const { perPiece } = dataOf(reply) as { perPiece: Record<string, { after: number }> };
    expect(perPiece.proteinG?.after).toBeGreaterThanOrEqual(20);
    expect(perPiece.energyKcal?.after).toBeLessThanOrEqual(250);
    expect(reply.answer?.cautions.join()).toContain('small mix first');
  });

  test('starts from the safest swap where something is avoided, and only the asker sees it', async () => {
    const reply = await ask('keep 20 g protein under 250 kcal, nut-free, 40 oat bars');
    expect(reply.answer?.audience).toBe('asker');
    const text = reply.answer ? plainText(reply.answer) : '';
    expect(text).toContain('Swapped first');
    expect(text).toContain('Cross-contact');
    const { amounts, pieces } = dataOf(reply) as { amounts: { foodId: string }[]; pieces: number };
    expect(pieces).toBe(40);
    expect(amounts.map(({ foodId }) => foodId).join(' ')).not.toMatch(/peanut|almond/);
  });

  test('says which targets fight and the nearest that works', async () => {
    const text = await told('balance oat bars at least 25 g protein under 150 kcal');
    expect(text).toMatch(/^These do not go together: .*at least 25 g protein and at most 150 kcal/);
    expect(text).toMatch(/Nearest that works: .* g protein and \d+ kcal a bar/);
  });

  test('tells no calories where others read along, and says where they are', async () => {
    for (const wanted of ['at least 20 g protein under 250 kcal', 'at least 25 g protein under 150 kcal']) {
      const { answer } = await ask(`balance oat bars ${wanted}`, { role: 'intern', isPrivate: false });
      const { next: _next, ...shown } = answer ?? { next: [] };
      expect(JSON.stringify(shown)).not.toMatch(/\d ?kcal|energyKcal/);
      expect(JSON.stringify(shown)).toContain('Calories stay out of channels');
    }
  });

  test('does not say that a calorie limit was held where it was not', async () => {
    const text = await told('balance oat bars at least 25 g protein under 150 kcal', { isPrivate: false });
    expect(text).toContain('The calorie limit: not as asked');
  });

  test('holds a least even if scooped when that is said', async () => {
    const reply = await ask('balance oat bars at least 20 g protein even if scooped');
    const { limits } = dataOf(reply) as { limits: { limit: string; after: number }[] };
    expect(limits[0]?.limit).toBe('at least 20 g protein even if scooped');
    expect(limits[0]?.after).toBeGreaterThan(20.5);
  });

  test.each([
    ['balance oat bars at least 30% protein', /% of energy from protein/],
    ['balance oat bars at least 15 g protein under 80 cents', /[0-9.]+ cents \(was 90.1 cents\)/],
    ['balance oat bars at least 20 g protein whole scoops only', /→ \d+ scoops/],
    ['balance oat bars at least 22 g protein keep the whey', /Kitchen whey, vanilla same 6 scoops/],
  ])('reads "%s"', async (text, found) => {
    expect(await told(text)).toMatch(found);
  });

  test('takes whole packages, shared by the mixes of a batch, and says when they fight', async () => {
    interface Amount {
      readonly foodId: string;
      readonly now: string;
      readonly nowG: number;
    }
    const nutButter = async (text: string) => {
      const { answer } = await ask(text);
      return (answer?.data.amounts as Amount[] | undefined)?.find(({ foodId }) => foodId === 'peanut-butter');
    };
    // A 16 oz jar: 453.6 g.
    expect(await nutButter('40 oat bars 20 g protein with whole jars of peanut butter')).toMatchObject({
      now: '1 jar',
      nowG: 453.592,
    });
    // Two mixes of 40: each takes half of the whole jars.
    const half = await nutButter('80 oat bars 20 g protein with whole jars of peanut butter');
    expect(half?.now).toMatch(/jars?$/);
    expect(((half?.nowG ?? 0) * 2) / 453.592).toBeCloseTo(Math.round(((half?.nowG ?? 0) * 2) / 453.592), 4);
    expect(await told('oat bars 20 g protein with whole bags of oats')).toMatch(
      /do not go together: .*Rolled oats by the whole bag/,
    );
    const { error } = await ask('oat bars 20 g protein with whole boxes of honey');
    expect(error).toMatchObject({ code: 'no_portion', hint: expect.stringContaining('grams') });
  });

  test('holds wet over dry between two ratios and a nutrient between two amounts', async () => {
    const between = await told('oat bars wet:dry between 0.6 and 0.7, 20 g protein');
    const ratio = Number(/([\d.]+) wet over dry a bar/.exec(between)?.[1]);
    expect(ratio).toBeGreaterThanOrEqual(0.6);
    expect(ratio).toBeLessThanOrEqual(0.7);
    const { answer } = await ask('oat bars between 20 and 22 g protein');
    const figures = answer?.data.perPiece as { proteinG: { after: number } } | undefined;
    const after = figures?.proteinG.after;
    expect(after).toBeGreaterThanOrEqual(20);
    expect(after).toBeLessThanOrEqual(22);
  });

  test('refuses a target below zero', async () => {
    for (const text of ['balance oat bars -5 g protein', 'oat bars -5 g protein'])
      expect((await ask(text)).error).toMatchObject({ code: 'bad_quantity' });
  });

  test('a need said afterwards keeps the targets', async () => {
    const chat = newChat();
    await ask('oat bars at least 20 g protein', { chat });
    const { answer } = await ask('balance it nut free', { chat });
    expect(answer?.data).toMatchObject({ balanced: true });
    expect(answer?.audience).toBe('asker');
  });

  test('asks for the recipe, and for the target', async () => {
    expect((await ask('keep 20 g protein under 250 kcal')).answer?.data).toMatchObject({ asks: 'recipe' });
    expect((await ask('balance oat bars')).answer?.data).toMatchObject({ asks: 'target' });
  });

  test('is for the kitchen', async () => {
    expect((await ask('oat bars at least 20 g protein', { role: 'athlete' })).error?.code).toBe(
      'not_allowed',
    );
  });
});

describe('what if', () => {
  test('counts the pieces that each hold so much, with the cuts beside it', async () => {
    const { answer } = await ask('bigger bars for linemen: 300 kcal, how many pieces');
    expect(answer?.title).toMatch(/^10 bars from one batch of Oat bars, cut 2 x 5: 318 kcal each/);
    expect(answer?.data).toMatchObject({ pieces: 10 });
  });

  test('counts no calories where others read along', async () => {
    const { answer } = await ask('oat bars of 300 kcal, how many pieces', { isPrivate: false });
    expect(answer?.title).toContain('Calories stay out of channels');
    expect(JSON.stringify(answer)).not.toMatch(/\d ?kcal/);
  });

  test('says what one batch holds when a piece cannot', async () => {
    const { error } = await ask('oat bars of 9000 g protein, how many pieces');
    expect(error?.code).toBe('not_possible');
  });
});
