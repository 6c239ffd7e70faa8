import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Answer } from '../../src/chat/answer.ts';
import { type Chat, createChat, type Reply } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import { noMemory } from '../../src/kitchen/no-memory.ts';
import type { Database } from '../../src/store/database.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { freshDatabase } from '../helpers/database.ts';
import { at, book } from '../helpers/stock-kitchen.ts';

let database: Database;
let chat: Chat;
let nowMs = 0;

beforeEach(async () => {
  database = await freshDatabase();
  nowMs = at('2026-10-27 14:00');
  const clock = { nowMs: () => nowMs };
  const ledgers = ledgersIn(database, clock.nowMs);
  chat = createChat({ ...noMemory, book, clock, ledgers }, (error) => {
    throw error;
  });
});
afterEach(() => database.close());

interface Asking {
  readonly when?: string;
  readonly who?: string;
  readonly role?: PersonRole;
  readonly workspace?: string;
  readonly requestKey?: string;
}

function say(text: string, asking: Asking = {}): Promise<Reply> {
  if (asking.when !== undefined) nowMs = at(asking.when);
  const { who = 'IN-01', role = 'intern', workspace = 'W1', requestKey } = asking;
  return chat.ask({
    text,
    asker: { role, who, workspace },
    conversation: `${workspace}-${who}`,
    isPrivate: true,
    nowMs,
    ...(requestKey === undefined ? {} : { requestKey }),
  });
}

async function answer(text: string, asking: Asking = {}): Promise<Answer> {
  const reply = await say(text, asking);
  if (!reply.answer) throw new Error(`${text}: ${JSON.stringify(reply.error)}`);
  return reply.answer;
}

const title = async (text: string, asking: Asking = {}): Promise<string> =>
  (await answer(text, asking)).title;
const shown = async (text: string, asking: Asking = {}): Promise<string> =>
  plainText(await answer(text, asking));

describe('made', () => {
  test('answers with count, code, place and use-by, and a label to print', async () => {
    const { title: line, attachments } = await answer('made 40 oat bars at 9:30 in fridge 2');
    expect(line).toBe('40 oat bars: batch B1, made 9:30 am, Fridge B, use by Mon Nov 2.');
    const label = attachments?.[0];
    expect(label?.fileName).toBe('label-B1.txt');
    for (const words of [
      'Oat bars',
      'made Tue Oct 27',
      'Use by Mon Nov 2',
      'Contains: milk, peanut',
      'Keep cold',
    ])
      expect(label?.content).toContain(words);
  });

  test('keeps several kinds as one entry, and undoes them together', async () => {
    expect(await title('made 40 oat bars and 20 cherry bars')).toMatch(/B1.*B2/);
    await answer('undo');
    expect(await title('stock')).toContain('Nothing can be served');
  });

  test('keeps the lot that went in', async () => {
    await answer('made 40 oat bars with lot HW2604A of vanilla whey');
    expect(await title('trace lot hw2604a')).toContain('went into 1 batch, B1');
    expect(await shown('made 10 oat bars with lot L42 of vanilla whey')).toContain('not on this kitchen');
  });

  test('asks whose lot it is rather than guess', async () => {
    const { error } = await say('made 40 oat bars with lot L42');
    expect(error).toMatchObject({ code: 'needs_more' });
  });

  test('asks which swap made it nut free, and freezes the allergens of the answer', async () => {
    expect(await title('made 12 nut free oat bars')).toContain('Which swap');
    expect(await title('stock')).toContain('Nothing');
    await answer('made 12 nut free oat bars');
    expect(await title('sunflower')).toContain('12 oat bars (sunflower butter');
    const label = await shown('label B1');
    expect(label).not.toMatch(/contains:.*peanut/i);
    expect(await title('nut free bars left', { when: '2026-10-27 16:00' })).toMatch(
      /^12 to serve list no peanut/,
    );
  });

  test('keeps a swap as it was said and nothing more', async () => {
    const said = await answer('made 10 oat bars with sunflower butter instead of peanut butter');
    expect(said.title).toContain('for peanut butter');
    expect((said.data.batches as { contains: string[] }[])[0]?.contains).not.toContain('peanut');
  });

  test('after a swap was spoken of, asks whether it was made with it', async () => {
    await answer('instead of peanut butter in the oat bars');
    expect(await title('made 40 oat bars')).toContain('with a swap?');
    expect(await title('as on the card')).toMatch(/^40 oat bars: batch B1/);
    expect(await title('made 24 oat bars')).toMatch(/^24 oat bars: batch B2/);
  });

  test('what is dairy free in the fridge is answered from the batches there', async () => {
    await answer('made 20 oat bars', { when: '2026-10-26 09:00' });
    const said = await answer('what in the fridge is dairy free', { when: '2026-10-27 14:00' });
    expect(said.title).toContain('0 to serve list no milk');
    expect(said.audience).toBe('asker');
  });

  test('a label can be asked for by recipe: the batch made last', async () => {
    await answer('made 20 oat bars', { when: '2026-10-26 09:00' });
    await answer('made 20 oat bars', { when: '2026-10-27 09:00' });
    expect(await title('label for the oat bars batch')).toContain('Label for B2');
  });

  test('warns when the batch is not free of what it is called', async () => {
    const said = await answer('made 10 dairy free oat bars with sunflower butter instead of peanut butter');
    expect(said.cautions.join(' ')).toContain('not clear of milk');
  });

  test('is corrected by "made 38 not 40"', async () => {
    await answer('made 40 oat bars');
    expect(await title('made 38 not 40')).toBe('38 oat bars in batch B1, not 40. Corrected.');
    expect((await answer('stock')).data).toMatchObject({ setting: 38 });
    await answer('undo');
    expect((await answer('stock')).data).toMatchObject({ setting: 40 });
    expect((await say('made 38 not 41')).error?.code).toBe('not_found');
  });

  test('asks how many, and takes the answer', async () => {
    expect(await title('made oat bars')).toContain('How many');
    expect(await title('40')).toContain('40 oat bars: batch B1');
  });

  test('ends with the opened milk', async () => {
    await answer('opened 2% milk', { when: '2026-10-24 09:00' });
    expect(await shown('made 40 oat bars', { when: '2026-10-27 09:00' })).toMatch(
      /use by Fri\s+Oct 30[\s\S]*opened Sat Oct 24/,
    );
  });
});

describe('moves', () => {
  test('to the freezer and back keep the days that were left', async () => {
    await answer('made 20 oat bars', { when: '2026-10-26 09:00' });
    expect(await title('move 20 oat bars to the freezer', { when: '2026-10-27 09:00' })).toContain(
      '5 days left',
    );
    expect(await title('thawed 8 oat bars', { when: '2026-11-05 08:00' })).toContain(
      'use by Mon Nov 9, thawed',
    );
  });

  test('a tailgate is a place, not a recipe; what was out before is told with its time', async () => {
    await answer('made 40 oat bars', { when: '2026-10-27 08:00' });
    expect(await title('took 12 to the tailgate 93F', { when: '2026-10-27 14:00' })).toBe(
      '12 oat bars out since 2:00 pm: serve or throw out by 3:00 pm. B1.',
    );
    const { cautions } = await answer('took 12 to the tailgate 93F', { when: '2026-10-27 14:30' });
    expect(cautions[0]).toBe(
      '12 oat bars of B1 were out already, since 2:00 pm. If these are the ones that go along, say "undo" and serve or throw them out by 3:00 pm.',
    );
  });

  test('out of the fridge start the four hours; a tailgate in the heat one', async () => {
    await answer('made 30 oat bars', { when: '2026-10-27 08:00' });
    expect(await title('took out 12 oat bars at 14:00', { when: '2026-10-27 14:30' })).toBe(
      '12 oat bars out since 2:00 pm: serve or throw out by 6:00 pm. B1.',
    );
    expect(await title('took 5 oat bars to the tailgate 93F')).toContain('by 3:30 pm');
    expect(await title('took 5 oat bars to the tailgate')).toContain('by 4:30 pm');
    expect(await title('what must be thrown out', { when: '2026-10-27 19:00' })).toBe(
      'Throw out 22 now: B1.',
    );
  });

  test.each([
    [
      'served 12 oat bars for the bus at 9',
      '12 oat bars out since 9:00 am: serve or throw out by 1:00 pm. B1.',
    ],
    ['12 oat bars on the bus at 9', '12 oat bars out since 9:00 am: serve or throw out by 1:00 pm. B1.'],
    ['loaded 12 oat bars onto the bus', '12 oat bars out since 10:00 am: serve or throw out by 2:00 pm. B1.'],
  ])('%s: on the road the four hours run too', async (told, said) => {
    await answer('made 30 oat bars', { when: '2026-10-27 06:00' });
    expect(await title(told, { when: '2026-10-27 10:00' })).toBe(said);
    expect(await shown('stock')).toContain('12 oat bars: B1, out of the fridge');
  });

  test('several kinds leave in one entry, all or none, and one undo brings them back', async () => {
    await answer('made 30 oat bars', { when: '2026-10-27 06:00' });
    await answer('made 20 cherry bars');
    expect(await title('served 3 oat bars and 2 cherry bars for the bus', { when: '2026-10-27 10:00' })).toBe(
      '3 oat bars and 2 cherry oat bars out since 10:00 am: serve or throw out by 2:00 pm. B1, B2.',
    );
    const { error } = await say('took out 4 oat bars and 60 cherry bars');
    expect(error?.message).toContain('Only 18 cherry oat bars');
    expect(await shown('stock')).not.toContain('4 oat bars: B1, out');
    await answer('undo');
    expect((await answer('stock')).data).toMatchObject({ usable: 50 });
    expect(await shown('stock')).not.toContain('out of the fridge');
  });

  test('what is eaten, or kept in a cooler, starts no clock', async () => {
    await answer('made 30 oat bars', { when: '2026-10-27 06:00' });
    expect(await title('served 3 oat bars', { when: '2026-10-27 10:00' })).toContain('served');
    expect(await title('served 4 oat bars for the bus on ice')).toContain('served');
  });

  test('an hour without am or pm, and a weekday that is today, are said as they were taken', async () => {
    await answer('made 30 oat bars', { when: '2026-10-27 05:30' });
    expect(await shown('tossed 2 oat bars at 9', { when: '2026-10-27 10:00' })).toContain(
      'Taken as 9:00 am.',
    );
    expect(await shown('served 2 oat bars tuesday at 9')).toContain('Taken as today, Tue Oct 27, 9:00 am.');
    expect(await shown('counted 20 oat bars at 9:30 am')).not.toContain('Taken as');
  });
});

describe('served, tossed, counted', () => {
  beforeEach(async () => {
    await answer('made 20 oat bars', { when: '2026-10-26 09:00' });
    await answer('made 20 cherry bars', { when: '2026-10-27 09:00' });
    nowMs = at('2026-10-27 14:00');
  });

  test('name batch, date and what is left', async () => {
    expect(await title('served 12 oat bars')).toBe(
      '12 oat bars served: B1 (made Mon Oct 26, use by Sun Nov 1). 8 left to serve.',
    );
    expect(await title('served 3 oat bars and 2 cherry bars')).toMatch(/B1.*B2/);
    expect(await title('served 4 of batch B2')).toContain('14 left');
  });

  test('ask which, once, and then log the answer once', async () => {
    expect(await title('served 5 bars', { who: 'IN-02' })).toContain('Which ones');
    expect(await title('cherry bars', { who: 'IN-02' })).toContain('5 cherry oat bars served');
    expect((await say('cherry bars', { who: 'IN-02' })).answer?.data.logged).not.toBe(true);
    expect((await answer('stock')).data).toMatchObject({ usable: 35 });
  });

  test('keep why something was thrown out', async () => {
    await answer('tossed 3 oat bars (dropped)');
    expect(await shown('week summary')).toContain('dropped 3');
  });

  test('the same delivery counts once', async () => {
    await answer('served 12 oat bars', { requestKey: 'm:1' });
    expect(await title('served 12 oat bars', { requestKey: 'm:1' })).toContain('Already logged');
    expect((await answer('stock')).data).toMatchObject({ usable: 28 });
  });

  test('"undo" says what came back', async () => {
    await answer('served 12 oat bars');
    expect(await shown('undo')).toMatch(/Undone: pieces served[\s\S]*12 oat bars back in B1/);
  });

  test('counting puts the ledger right and says by how much', async () => {
    expect(await title('counted 15 oat bars')).toBe('15 oat bars counted: the ledger said 20; B1 put right.');
  });

  test('past its date is thrown out in one word', async () => {
    nowMs = at('2026-11-02 09:00');
    expect(await title('toss everything expired')).toContain('20 oat bars thrown out');
    expect(await title('toss everything expired')).toContain('nothing is past its date');
  });
});

describe('bad input', () => {
  test.each([
    ['served -3 oat bars', 'bad_quantity'],
    ['served 0 oat bars', 'bad_quantity'],
    ['served 1e9 oat bars', 'bad_quantity'],
    ['made 1000000000 oat bars', 'bad_quantity'],
    ['made 40 oat bars tomorrow', 'bad_quantity'],
    ['served 3 unicorn bars', 'unknown_recipe'],
    ['tossed batch B9', 'not_found'],
    ["what's in fridge 9", 'not_found'],
    ['made 5 oat bars in the garage', 'not_found'],
    ['fridge 9 38F', 'not_found'],
    ['fridge a 400F', 'bad_quantity'],
    ['served 12 oat bars', 'not_possible'],
    ['undo', 'not_found'],
    ['move 5 oat bars', 'needs_more'],
    ['made 38 not 40', 'not_found'],
    ['trace lot ZZ9', 'not_found'],
    ['label B7', 'not_found'],
  ])('%s: %s, with a way out', async (text, code) => {
    const { error } = await say(text);
    expect(error?.code).toBe(code);
    expect(error?.hint.length).toBeGreaterThan(10);
  });

  test('a friday said on a friday is this friday, and the answer shows the date', async () => {
    expect(await title('made 5 oat bars friday', { when: '2026-10-30 14:00' })).toContain('use by Thu Nov 5');
    expect(await title('made 5 oat bars friday', { when: '2026-10-31 14:00' })).toContain('made Fri Oct 30');
  });

  test('"at 6" is the 6 o\'clock that has been', async () => {
    expect(await title('made 5 oat bars at 6', { when: '2026-10-30 14:00' })).toContain('made 6:00 am');
    expect(await title('made 5 oat bars at 2:00', { when: '2026-10-30 14:30' })).toContain('made 2:00 pm');
  });

  test('athletes may look and not log', async () => {
    expect((await say('made 40 oat bars', { role: 'athlete' })).error?.code).toBe('not_allowed');
    expect((await say('stock', { role: 'athlete' })).answer).toBeDefined();
  });
});

describe('stock', () => {
  beforeEach(async () => {
    await answer('made 10 oat bars in fridge a', { when: '2026-10-21 09:00' });
    await answer('made 20 oat bars in fridge b', { when: '2026-10-26 09:00' });
    await answer('made 12 cherry bars in fridge a', { when: '2026-10-27 13:30' });
    nowMs = at('2026-10-27 14:00');
  });

  test('starts with what can be served and goes by use-by', async () => {
    const text = await shown('stock');
    expect(text).toMatch(/^30 can be served: 30 oat bars\./);
    expect(text).toMatch(/10 oat bars: B1, Fridge A, use by Tue Oct 27 \(today\)[\s\S]*20 oat bars: B2/);
    expect(text).toMatch(/Still setting\n- 12 cherry oat bars: B3.*sets until 2:30 pm/);
    expect(text).toContain('Below par');
  });

  test('of one recipe, place, batch, day', async () => {
    expect(await title('how many oat bars are left')).toBe(
      '30 oat bars can be served (par 24); first out: B1.',
    );
    expect(await title("what's in fridge 2")).toBe('20 pieces in Fridge B.');
    expect(await title('use by of batch B2')).toBe('B2, 20 oat bars: use by Sun Nov 1.');
    expect(await title('who made batch B2')).toContain('by IN-01');
    expect(await title('what expires today')).toBe('10 have their last day on Tue Oct 27.');
  });

  test('enough for some people now or later', async () => {
    expect(await title('enough oat bars for 24?')).toMatch(/^Yes, 6 over/);
    expect(await title('enough oat bars for 24 on friday?')).toMatch(
      /^No, 4 short: 20 pieces can be served on Fri Oct 30/,
    );
  });

  test('says what must be thrown out', async () => {
    expect(await title('stock', { when: '2026-10-28 08:00' })).toContain('Throw out 10 now: B1.');
  });

  test('another workspace sees nothing', async () => {
    expect(await title('stock', { workspace: 'W2' })).toBe('Nothing can be served now.');
  });

  test('a week is summed up', async () => {
    await answer('served 20 oat bars');
    await answer('tossed 10 oat bars');
    const text = await shown('week summary');
    expect(text).toMatch(/^32 made, 20 served, 10 wasted/);
  });

  test('tells when something ran out', async () => {
    await answer('served 30 oat bars');
    expect(await shown('week summary')).toContain('Ran out: oat bars (2:00 pm)');
  });
});

describe('temperatures', () => {
  test('a good reading is logged without a promise', async () => {
    const text = await shown('fridge a 38F');
    expect(text).toContain('38 °F (3.3 °C) in Fridge A. At or below 41 °F (5 °C). Logged');
    expect(text).not.toMatch(/\bsafe\b/i);
  });

  test('a warm fridge says what to do, since when, and what is in it', async () => {
    await answer('made 20 oat bars in fridge b', { when: '2026-10-27 08:00' });
    await answer('fridge b 39F', { when: '2026-10-27 08:30' });
    const text = await shown('fridge 2 43F', { when: '2026-10-27 14:00' });
    expect(text).toMatch(/^43 °F \(6.1 °C\) in Fridge B, above 41 °F \(5 °C\): act now/);
    expect(text).toContain('second thermometer');
    expect(text).toContain('5 h 30 min ago');
    expect(text).toContain('20 oat bars: B1');
    expect(text).toContain('local health code');
    expect(text).not.toMatch(/\bsafe\b/i);
  });

  test('41.0 °F is 5 °C and within; 42 °F is not', async () => {
    expect(await title('fridge a 5C')).toContain('At or below');
    expect(await title('fridge a 6C')).toContain('act now');
    expect(await title('fridge a 41F')).toContain('At or below');
    expect(await title('fridge a 42F')).toContain('act now');
  });

  test('asks which fridge, and logs the answer', async () => {
    expect(await title('fridge 44F')).toContain('Which one');
    expect(await title('fridge b')).toContain('44 °F (6.7 °C) in Fridge B');
    expect(await title('temperature log')).toContain('1 readings');
  });

  test('several readings are one entry', async () => {
    expect(await title('fridge a 38F, fridge b 44F')).toMatch(/Fridge A; 44 °F.*Fridge B, above/);
    await answer('undo');
    expect(await title('temperature log')).toMatch(/^0 readings/);
  });

  test('the log is a file with time, reading, who and what was done, and shows what was missed', async () => {
    await answer('fridge a 38F', { when: '2026-10-25 07:00' });
    await answer('fridge a 43F moved all to fridge b', { when: '2026-10-26 14:00' });
    const log = await answer('temperature log', { when: '2026-10-27 15:00' });
    expect(log.title).toBe('2 readings since Wed Oct 21: 1 above 41 °F, 3 missed.');
    const [header, ...rows] = (log.attachments?.[0]?.content ?? '').trim().split('\n');
    expect(header).toBe('date,time,zone,place,reading_f,reading_c,above_41f,who,action');
    expect(rows[1]).toBe('2026-10-26,14:00,CDT,Fridge A,43,6.1,yes,IN-01,moved all to fridge b');
  });

  test('food left out overnight is thrown out, and a broken fridge is met like a power failure', async () => {
    expect(await title('forgot bars on counter overnight')).toContain('throw it out');
    expect(await title('fridge broke')).toContain('Doors shut');
  });

  test('no answer to any reading declares food safe', async () => {
    for (const text of [
      'power out 3 hours',
      'cooling 70F after 1 hour',
      'received milk at 39F',
      'oat bars out for 1 hour',
      'freezer 0F',
    ])
      expect(await shown(text)).not.toMatch(/\bsafe(ly)?\b/i);
  });
});

describe('tracing', () => {
  test('goes from lot to batches and from batch to lots, with what became of them', async () => {
    await answer('made 40 oat bars with lot HW2604A', { when: '2026-10-27 09:00' });
    await answer('served 22 oat bars', { when: '2026-10-27 14:00', who: 'IN-02' });
    await answer('tossed 3 oat bars (dropped)', { who: 'IN-02' });
    const text = await shown('trace oat bars tuesday');
    expect(text).toMatch(/^Traced: 1 batch, B1: 40 made, 22 served, 3 tossed, 15 left/);
    expect(text).toContain('by IN-01');
    expect(text).toContain('Kitchen whey, vanilla lot HW2604A');
    expect((await answer('trace lot HW2604A')).data).toMatchObject({ batches: [{ batch: 'B1', left: 15 }] });
  });
});

test('a week in which nobody read a fridge that holds food, or was read before, says what was missed', async () => {
  await answer('made 40 oat bars in fridge b', { when: '2026-11-02 09:30' });
  await answer('fridge a 38F', { when: '2026-11-02 09:31' });
  const week = await shown('week summary', { when: '2026-11-15 18:00' });
  expect(week).toContain('Readings: 0 logged, 26 missed');
  const log = await shown('temperature log', { when: '2026-11-15 18:00' });
  expect(log).toContain('No reading is logged in this time.');
  expect(log).toContain('26 missed');
});
