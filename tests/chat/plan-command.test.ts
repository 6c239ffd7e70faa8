import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { freshDatabase } from '../helpers/database.ts';
import { rosterKitchen } from '../helpers/roster-kitchen.ts';
import { at } from '../helpers/stock-kitchen.ts';

/** A Wednesday. */
const NOW = at('2026-12-02 10:00');
let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());
const room = (file?: string, nowMs = NOW) => rosterKitchen(database, nowMs, file);

interface VariantData {
  readonly recipe: string;
  readonly people: number;
  readonly wanted: number;
  readonly made: number;
  readonly startMs: number;
  readonly setMs: number;
}
const variantsIn = (data: Readonly<Record<string, unknown>> | undefined) =>
  (data?.variants ?? []) as VariantData[];

describe('a plan', () => {
  test('feeds everybody said, in whole slabs with spares, set before it is packed', async () => {
    const { ask } = await room();
    const { answer, intent } = await ask('plan saturday 44 travelling 5 nut free 2 coeliac');
    expect(intent).toBe('plan');
    const variants = variantsIn(answer?.data);
    expect(variants.reduce((sum, { people }) => sum + people, 0)).toBe(44);
    expect(answer?.data.unfed).toEqual([]);
    for (const { wanted, made, people, setMs, startMs } of variants) {
      expect(wanted).toBe(Math.ceil(people * 1.1));
      expect(made).toBeGreaterThanOrEqual(wanted);
      expect(setMs).toBeLessThanOrEqual(Number(answer?.data.packAtMs));
      expect(startMs).toBeGreaterThanOrEqual(NOW);
    }
    expect(answer?.attachments?.[0]?.content).toContain('Use by'.toLowerCase());
  });

  test('says what is practice, what the code does not prescribe and what sanitizer cannot do', async () => {
    const { read } = await room();
    const text = await read('plan saturday 44 travelling 5 nut free');
    expect(text).toContain('does not prescribe');
    expect(text).toContain('does not remove allergens');
    expect(text).not.toMatch(/\bis safe\b|\bare safe\b/);
  });

  test('uses the game of that day: its people, its time to pack, its recipe', async () => {
    const { ask, read } = await room();
    await ask('game saturday away 2pm vs Riverton leave 9am 30 people with cherry bars');
    const { answer } = await ask('plan saturday 2 nut free');
    expect(answer?.data.people).toBe(30);
    expect(answer?.data.packAtMs).toBe(at('2026-12-05 08:00'));
    expect(variantsIn(answer?.data).every(({ recipe }) => recipe === 'cherry-oat-bars')).toBe(true);
    expect(await read('plan vs Riverton')).toContain('30 people');
  });
});

describe('stock is taken off', () => {
  interface Stocked extends VariantData {
    readonly slabs: number;
    readonly fromStock: readonly { readonly code: string; readonly pieces: number }[];
  }
  const planned = async (ask: Awaited<ReturnType<typeof room>>['ask'], text: string) => {
    const { answer } = await ask(text);
    return (answer?.data.variants ?? []) as Stocked[];
  };

  test('in date, set and the same: what is missing is made, in whole slabs', async () => {
    const { ask, read } = await room();
    await ask('made 24 oat bars');
    // 60 people and 10 % spare are 66; 24 are there, 42 are four slabs of 12.
    const [bars] = await planned(ask, 'plan saturday 60 travelling');
    expect(bars).toMatchObject({ wanted: 66, fromStock: [{ code: 'B1', pieces: 24 }], slabs: 4, made: 48 });
    const [enough] = await planned(ask, 'plan saturday 20 travelling');
    expect(enough).toMatchObject({ wanted: 22, fromStock: [{ code: 'B1', pieces: 22 }], slabs: 0, made: 0 });
    const text = await read('plan saturday 20 travelling');
    expect(text).toContain('0 pieces to make, 22 from stock');
    expect(text).not.toContain('Too late');
  });

  test('a game before takes its own first', async () => {
    const { ask } = await room();
    await ask('made 24 oat bars');
    await ask('game friday 2pm vs Riverton 10 people with oat bars');
    // Ten people and their spare take 11 of 24.
    const [bars] = await planned(ask, 'plan saturday 20 travelling');
    expect(bars).toMatchObject({ wanted: 22, fromStock: [{ code: 'B1', pieces: 13 }], slabs: 1, made: 12 });
  });

  test('not what is past its use-by on the day, nor what was made from other foods', async () => {
    const { ask } = await room();
    await ask('made 24 oat bars');
    const [later] = await planned(ask, 'plan 2026-12-19 20 travelling');
    expect(later).toMatchObject({ fromStock: [], made: 24 });
    const swapped = await room();
    await swapped.ask('made 24 oat bars with sunflower butter instead of peanut butter');
    const [bars] = await planned(swapped.ask, 'plan saturday 20 travelling with oat bars');
    expect(bars).toMatchObject({ recipe: 'oat-bars', fromStock: [], made: 24 });
  });
});

describe('every count is placed or asked about', () => {
  test.each([
    ['plan saturday 44 people 5 nut free 1 sesame', [5, 1, 38]],
    ['plan saturday 44, 1 sesame allergy, 1 strawberry allergy, 1 garlic', [1, 1, 1, 41]],
    ['plan saturday 20, 3 peanut 1 egg', [3, 1, 16]],
    ['plan saturday 44 travelling 2 allergic to milk and 1 allergic to kiwi', [2, 1, 41]],
  ])('%s', async (text, groups) => {
    const { ask } = await room();
    const { answer } = await ask(text);
    const variants = (answer?.data.variants ?? []) as { serves: { people: number }[] }[];
    const counts = variants.flatMap(({ serves }) => serves.map(({ people }) => people));
    expect(counts.sort()).toEqual([...groups].sort());
  });

  test('pieces each are as said', async () => {
    const { ask } = await room();
    const { answer } = await ask('plan saturday 20 travelling 2 oat bars each');
    // 20 people, 2 each, 10 % spare.
    expect(variantsIn(answer?.data)).toMatchObject([{ recipe: 'oat-bars', wanted: 44 }]);
  });

  test.each([
    ['plan saturday 44, 12 coaches, 5 nut free', '12 coaches'],
    ['plan saturday 20 travelling under $20', '$'],
    ['plan saturday 20 travelling 3 spare', '3 spare'],
  ])('%s is asked about', async (text, unclear) => {
    const { ask } = await room();
    const { error } = await ask(text);
    expect(error).toMatchObject({ code: 'needs_more', message: expect.stringContaining(unclear) });
    expect((await ask(/"(plan [^"]+)"/.exec(error?.hint ?? '')?.[1] ?? '')).error).toBeUndefined();
  });
});

describe('what the log would refuse', () => {
  test('a label that changed is read before the work starts', async () => {
    const { ask, read } = await room();
    await ask('peanut butter has a new label, now contains soy');
    expect(await read('plan saturday 20 travelling with oat bars')).toMatch(
      /Before anything is made[\s\S]*label of Peanut butter.* changed; staff read it/,
    );
  });
});

describe('by the roster', () => {
  const FILE = `code,allergies,coeliac,avoids
WP-01,peanut,,
WP-02,,yes,
WP-03,milk; egg,,
WP-04,,,nosuchfruit
`;

  test('feeds all needs, shows counts and nobody, and says first and loudly who is not fed', async () => {
    const { ask, read } = await room(FILE);
    await ask('import roster.csv');
    const { answer } = await ask('plan saturday 44 travelling', 'intern', 'IN-01');
    expect(answer?.title).toMatch(/^NOT FED: 1 of 44/);
    expect(answer?.sections[0]).toMatchObject({ kind: 'list', heading: expect.stringContaining('NOT FED') });
    expect(JSON.stringify(answer)).not.toMatch(/WP-0\d/);
    expect(variantsIn(answer?.data).reduce((sum, { people }) => sum + people, 0)).toBe(43);
    expect(await read('plan saturday 44 travelling 2 nut free')).toContain('The roster also lists');
  });

  test('of 5,000 people plans for the ones who may be meant, or asks', async () => {
    const rows = Array.from({ length: 5_000 }, (_, i) => `XC-${i},${i % 40 === 0 ? 'peanut' : ''}`);
    const { ask } = await room(['code,allergies', ...rows].join('\n'));
    await ask('import roster.csv');
    const few = await ask('plan saturday 44 travelling');
    expect(few.error?.code).toBe('needs_more');
    const { answer } = await ask('plan saturday 300 travelling');
    expect(answer?.data.people).toBe(300);
    expect(answer?.data.unfed).toEqual([]);
  });
});

describe('what cannot be planned says what to write', () => {
  test.each([
    ['plan saturday 0 people', 'bad_quantity'],
    ['plan saturday 44 travelling -3 nut free', 'bad_quantity'],
    ['plan saturday 4 travelling 5 nut free', 'bad_quantity'],
    ['plan saturday 6 travelling 4 nut free 4 coeliac', 'bad_quantity'],
    ['plan saturday 44.5 travelling', 'bad_quantity'],
    ['plan saturday 90000 travelling', 'bad_quantity'],
    ['plan 2026-11-20 44 travelling', 'bad_quantity'],
    ['plan yesterday 44 travelling', 'bad_quantity'],
    ['plan 44 travelling', 'needs_more'],
    ['plan wednesday 44 travelling', 'needs_more'],
  ])('%s', async (text, code) => {
    const { ask } = await room();
    const { error } = await ask(text);
    expect(error?.code).toBe(code);
    expect(error?.hint).toMatch(/^(Write|Say|Give)/);
  });

  test('athletes are told whom to ask', async () => {
    const { ask } = await room();
    expect((await ask('plan saturday 44', 'athlete', 'WP-01')).error?.code).toBe('not_allowed');
  });

  test('too late is said, with when it had to start', async () => {
    const { read } = await room(undefined, at('2026-12-05 06:30'));
    expect(await read('plan today 44 travelling 5 nut free')).toMatch(/Too late|closed|cannot be made/);
  });
});
