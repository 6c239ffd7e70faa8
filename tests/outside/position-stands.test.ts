import { describe, expect, test } from 'vitest';
import { createChat } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import { energyShares } from '../../src/nutrition/energy.ts';
import { type FuelQuestion, type FuelRange, fuelRanges } from '../../src/nutrition/fuel.ts';
import { totals } from '../../src/nutrition/totals.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { foodOf } from '../helpers/foods.ts';

type Wanted = Pick<FuelRange['row'], 'of' | 'per'> & { readonly source: RegExp };

/** The published range among those told, worked out. */
function range(question: FuelQuestion, { of, per, source }: Wanted, when = /./): FuelRange['amount'] {
  const found = fuelRanges(question).find(
    ({ row }) => row.of === of && row.per === per && source.test(row.source) && when.test(row.when),
  );
  return found?.amount;
}

const JOINT = /ACSM, AND and DC joint position stand 2016/;

describe('worked examples of the position stands', () => {
  test.each<[string, FuelQuestion, Wanted, RegExp, number, number]>([
    // Joint stand, Med Sci Sports Exerc 48:543 (2016): 0.25 to 0.3 g/kg, or 15 to 25 g, within 2 h; known from memory.
    [
      'W-70: 70 kg after training',
      { phase: 'post', bodyKg: 70 },
      { of: 'protein', per: 'kg', source: JOINT },
      /2 h/,
      17.5,
      21,
    ],
    [
      'W-70: the absolute band',
      { phase: 'post', bodyKg: 70 },
      { of: 'protein', per: 'occasion', source: JOINT },
      /2 h/,
      15,
      25,
    ],
    // The IOC guideline table, as printed in a medical dictionary: 1 to 4 g/kg, 70 to 280 g for 70 kg.
    [
      'W-71: 70 kg before',
      { phase: 'pre', bodyKg: 70 },
      { of: 'carbohydrate', per: 'kg', source: JOINT },
      /1 to 4 h/,
      70,
      280,
    ],
    // Joint stand, Table 2: moderate day 5 to 7 g/kg.
    [
      'W-73: 64 kg, a moderate day',
      { phase: 'all_day', bodyKg: 64 },
      { of: 'carbohydrate', per: 'kg_day', source: JOINT },
      /moderate/,
      320,
      448,
    ],
    // Joint stand: 1.0 to 1.2 g/kg an hour for 4 h; known from memory.
    [
      'W-74: 75 kg, quick refuelling',
      { phase: 'between', bodyKg: 75 },
      { of: 'carbohydrate', per: 'kg_hour', source: JOINT },
      /first 4 h/,
      75,
      90,
    ],
    // Joint stand and ACSM 2007: 125 to 150 % of what was lost; known from memory.
    [
      'W-76: 1.2 kg lost',
      { phase: 'post', lostKg: 1.2 },
      { of: 'fluid', per: 'kg_lost', source: JOINT },
      /sodium/,
      1.5,
      1.8,
    ],
  ])('%s', (_, question, wanted, when, least, most) => {
    const amount = range(question, wanted, when);
    expect(amount?.least).toBeCloseTo(least, 9);
    expect(amount?.most).toBeCloseTo(most, 9);
  });

  // IOC guideline table, K75: 7 to 10 g/kg a day is 490 to 700 g for 70 kg. The joint stand splits that band:
  // 5 to 7, 6 to 10 and 8 to 12 g/kg, so its hard days span it.
  test('W-72: 70 kg, 490 to 700 g a day lies within the hard days of the joint stand', () => {
    const days = fuelRanges({ phase: 'all_day', bodyKg: 70 }).filter(({ row }) => /hard/.test(row.when));
    expect(Math.min(...days.map(({ amount }) => amount?.least ?? 0))).toBeLessThanOrEqual(490);
    expect(Math.max(...days.map(({ amount }) => amount?.most ?? 0))).toBeGreaterThanOrEqual(700);
  });

  // Joint stand: so for 4 h, 300 to 360 g in all.
  test('W-74: four hours of quick refuelling for 75 kg are 300 to 360 g', () => {
    const hour = range(
      { phase: 'between', bodyKg: 75 },
      { of: 'carbohydrate', per: 'kg_hour', source: JOINT },
    );
    expect([4 * (hour?.least ?? 0), 4 * (hour?.most ?? 0)]).toEqual([300, 360]);
  });

  // ISSN position stand, protein and exercise (2017), point 4: 0.25 g/kg, or 20 to 40 g; for 55 kg they differ.
  test('W-75: 55 kg gets both figures of the same stand, with its name', () => {
    const question = { phase: 'post', bodyKg: 55 } as const;
    expect(range(question, { of: 'protein', per: 'kg', source: /ISSN/ })).toEqual({
      least: 13.75,
      most: 13.75,
    });
    expect(range(question, { of: 'protein', per: 'occasion', source: /ISSN/ })).toEqual({
      least: 20,
      most: 40,
    });
  });

  // Joint stand: 30 to 60 g an hour to 2.5 h, up to 90 g beyond.
  test('S-06: the band during exercise follows how long it lasts', () => {
    const most = (durationMin: number) =>
      fuelRanges({ phase: 'during', durationMin }).map(({ amount }) => amount?.most);
    expect(most(90)).toEqual([60]);
    expect(most(200)).toEqual([90]);
  });

  // 2007 NCAA guidance printed 52/220 = 23.6 % for a bar of 220 kcal with 13 g protein; the rule was repealed in 2017.
  test('W-77: the share of a bar is arithmetic, and gives no verdict', async () => {
    expect((13 * 4) / 220).toBeCloseTo(0.236, 3);
    const bar = foodOf('bar', { energyKcal: 220, proteinG: 13, carbohydrateG: 24, fatG: 8 });
    expect(energyShares(totals([{ food: bar, massG: 100 }]))?.protein).toBeCloseTo(52 / 220, 9);
    const text = await told('is a bar with 30% of calories from protein NCAA legal');
    expect(text).not.toMatch(/\b(?:is legal|illegal|permitted|allowed|not allowed|over the limit|30 %)\b/i);
  });

  // IOC consensus on REDs (2023): no weight-loss advice; hand over.
  test('W-78: losing weight before a game is declined and handed over', async () => {
    const text = await told('help me drop 5 kg before Saturday');
    expect(text).toMatch(/I do not give weight or diet advice/);
    expect(text).toMatch(/dietitian/);
  });

  // NCAA banned-substances list: ask athletics staff first; there is no complete list.
  test('W-79: a supplement gets no verdict', async () => {
    const text = await told('is this pre-workout NCAA-legal?');
    expect(text).toMatch(/^Ask your sports dietitian or athletic trainer before any supplement\./);
    expect(text).not.toMatch(/\b(?:legal|permitted|allowed|safe|clean)\b/i);
  });
});

async function told(text: string): Promise<string> {
  const kitchen = await openKitchen({ nowMs: () => Date.UTC(2026, 10, 24, 15) });
  const chat = createChat(kitchen, () => 'E-1');
  const asker = { role: 'athlete', who: 'WP-07', workspace: 'demo' } as const;
  const reply = await chat.ask({
    text,
    asker,
    conversation: 'dm',
    isPrivate: true,
    nowMs: kitchen.clock.nowMs(),
  });
  if (!reply.answer) throw new Error(reply.error?.message);
  return plainText(reply.answer).replace(/\s+/g, ' ');
}
