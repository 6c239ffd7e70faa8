import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Chat, createChat } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { Book } from '../../src/nutrition/book.ts';
import { type RememberingKitchen, rememberingKitchen } from '../helpers/remembering-kitchen.ts';
import { at, recipe } from '../helpers/stock-kitchen.ts';

let store: RememberingKitchen;
let chat: Chat;
const nowMs = at('2026-11-02 09:30');

/** The demo kitchen, and bars whose own card holds the powder that nobody approved. */
function withUnapprovedBars(book: Book): Book {
  const bars = recipe('oat-bars');
  const lines = bars.lines.map((line) =>
    line.foodId === 'whey-vanilla' ? { ...line, foodId: 'whey-cookie' } : line,
  );
  const gift = { ...bars, id: 'gift-bars', title: 'Gift bars', aliases: [], lines };
  return { ...book, recipes: new Map([...book.recipes, [gift.id, gift]]) };
}

beforeEach(async () => {
  store = await rememberingKitchen({ nowMs: () => nowMs });
  chat = createChat({ ...store.kitchen, book: withUnapprovedBars(store.kitchen.book) }, (error) => {
    throw error;
  });
});
afterEach(() => store.close());

const asker = (role: PersonRole) => ({ role, who: role === 'staff' ? 'ST-01' : 'IN-01', workspace: 'T1' });
const say = (text: string, role: PersonRole = 'staff', requestKey?: string) =>
  chat.ask({
    text,
    asker: asker(role),
    conversation: role,
    isPrivate: true,
    nowMs,
    ...(requestKey === undefined ? {} : { requestKey }),
  });
const held = () => store.kitchen.ledgers('T1').holdings();

const OVERRIDDEN = 'made 20 oat bars with cookie whey override: dietitian approved lot VC881 by phone for 30';

describe('a batch with a product the dietitian has not approved', () => {
  test.each(['made 20 oat bars with cookie whey', 'made 20 gift bars'])(
    '"%s" is not logged',
    async (text) => {
      for (const role of ['staff', 'intern'] as const) {
        const { error } = await say(text, role);
        expect(error?.code).toBe('not_possible');
        expect(error?.message).toMatch(/^Value whey, cookie flavor in (oat|gift) bars: not approved/);
        expect(error?.hint).toMatch(/Ask staff.*override: /);
      }
      expect(await held()).toEqual([]);
    },
  );

  test('is logged by staff with a reason, which the batch and its trace keep', async () => {
    const { answer } = await say(OVERRIDDEN, 'staff', 'K1');
    expect(answer?.cautions.join(' ')).toContain(
      'Override kept: dietitian approved lot VC881 by phone for 30.',
    );
    const [holding] = await held();
    expect(holding?.batch).toMatchObject({ pieces: 20, lots: [] });
    expect(holding?.batch.facts.override).toEqual({
      products: ['Value whey, cookie flavor'],
      reason: 'dietitian approved lot VC881 by phone for 30',
    });
    const traced = (await say('trace B1')).answer;
    if (!traced) throw new Error('nothing was traced');
    expect(plainText(traced)).toMatch(/Staff override[\s\S]*logged by ST-01: dietitian\s+approved lot VC881/);
    expect((await say(OVERRIDDEN, 'staff', 'K1')).answer?.title).toMatch(/^Already logged/);
    expect(await held()).toHaveLength(1);
    expect((await say('undo')).answer?.title).toMatch(/^Undone/);
    expect(await held()).toEqual([]);
  });

  test('is not logged for an intern who writes an override, nor without a reason', async () => {
    expect((await say(OVERRIDDEN, 'intern')).error).toMatchObject({ code: 'not_allowed' });
    expect((await say('made 20 oat bars with cookie whey override')).error?.code).toBe('needs_more');
    expect(await held()).toEqual([]);
  });

  test('is sent back beside the field for the reason', async () => {
    const request = { text: '', asker: asker('staff'), conversation: 'form', isPrivate: true, nowMs };
    const done = await chat.forms.submit('batch', request, {
      recipe: 'gift-bars',
      pieces: '20',
      place: 'fridge_a',
      day: '2026-11-02',
    });
    expect('faults' in done && done.faults.override).toMatch(/not approved by the dietitian.*override: /);
    expect(await held()).toEqual([]);
  });
});

test('an override where all is approved is not kept, and that is said', async () => {
  const { answer } = await say('made 20 oat bars override: dietitian approved by phone');
  expect(answer?.cautions.join(' ')).toContain('none was kept');
  expect((await held())[0]?.batch.facts.override).toBeUndefined();
});

test('an emergency in the reason of an override is still an emergency', async () => {
  const { intent } = await say('made 20 oat bars override: she cannot breathe');
  expect(intent).toBe('emergency');
});
