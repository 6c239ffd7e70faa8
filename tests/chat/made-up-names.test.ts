import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createChat, type Reply } from '../../src/chat/chat.ts';
import { idCalled } from '../../src/chat/reading/sure-name.ts';
import { NAMING_WORDS } from '../../src/chat/reading/vocabulary/name-words.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });
const { book } = kitchen;
const numRuns = Number(process.env.FC_RUNS ?? 400);

const knownWords = [
  ...new Set(
    [...book.recipes.values(), ...book.foods.values()]
      .flatMap((thing) => ('title' in thing ? thing.title : thing.name).toLowerCase().split(/[^a-z]+/))
      .filter((word) => word.length > 3 && !/^(?:gluten|lactose|nuts|wheat|free)$/.test(word)),
  ),
];
const nonsense = fc
  .tuple(
    fc.constantFrom('z', 'kr', 'gl', 'br', 'v', 'pl', 'qu'),
    fc.constantFrom('o', 'a', 'u', 'ee', 'i'),
    fc.constantFrom('rbl', 'nk', 'mpf', 'zz', 'ldr'),
    fc.constantFrom('at', 'ix', 'oon', 'ump', 'aro'),
  )
  .map((parts) => parts.join(''));
/** Not those that are a food here by themselves: with another one they are two foods. */
const naming = fc.constantFrom(...[...NAMING_WORDS].filter((word) => idCalled(word, book) === undefined));
const food = fc.constantFrom(...knownWords);
const piece = fc.constantFrom(
  '',
  'bar',
  'bars',
  'bites',
  'cup',
  'cups',
  'muffin',
  'mix',
  'crunch',
  'pie',
  'balls',
);

/** A name with something known in it or not, that no recipe and no food here has. */
const madeUp = fc
  .tuple(
    fc.oneof(nonsense, naming, food),
    fc.oneof(nonsense, naming, food),
    fc.oneof(nonsense, fc.constant('')),
    piece,
  )
  .filter(([first, second, third]) =>
    [first, second, third].some((word) => !knownWords.includes(word) && word !== ''),
  )
  .map((words) => words.filter((word) => word !== '').join(' '))
  .filter((name) => idCalled(name, book) === undefined && !/\b(?:free|less|safe|nuts)\b/.test(name));

const question = fc.constantFrom<(name: string) => string>(
  (name) => `allergens in ${name}`,
  (name) => `is the ${name} nut free`,
  (name) => `can I eat the ${name}`,
  (name) => `does ${name} have dairy`,
  (name) => `what allergens are in the ${name}?`,
  (name) => `can i have ${name}, peanut allergy`,
);

/** What an answer says about one food's allergens. */
const verdictOf = ({ answer }: Reply): unknown =>
  answer?.data.contains ??
  answer?.data.verdict ??
  (/contains|may contain|listed in/i.test(answer?.title ?? '') || undefined);

describe('a made-up name', () => {
  test('never gets the allergens of another food or recipe, whatever was spoken of before', async () => {
    await fc.assert(
      fc.asyncProperty(madeUp, question, fc.boolean(), async (name, ask, isAfter) => {
        const chat = createChat(kitchen, () => 'id');
        const asker = { role: 'athlete', who: 'WP-07', workspace: 'local' } as const;
        const say = (text: string) =>
          chat.ask({ text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() });
        if (isAfter) await say('allergens in the oat bars');
        const reply = await say(ask(name));
        expect(verdictOf(reply), `${ask(name)} -> ${reply.answer?.title}`).toBeUndefined();
      }),
      { numRuns },
    );
  });
});
