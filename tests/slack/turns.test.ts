import { expect, test } from 'vitest';
import { createTurns } from '../../src/slack/turns.ts';

/** Counts rounds of the event loop, by itself, until `done`. */
function countRounds(done: () => boolean): { readonly at: () => number } {
  let round = 0;
  const again = (): void => {
    round += 1;
    if (!done()) setImmediate(again);
  };
  setImmediate(again);
  return { at: () => round };
}

test('answers that wait at once go in rounds of their own, in the order they came', async () => {
  const turn = createTurns();
  const taken: { name: string; round: number }[] = [];
  const rounds = countRounds(() => taken.length === 4);
  const names = ['first', 'second', 'third', 'fourth'];
  await Promise.all(
    names.map(async (name) => {
      await turn();
      taken.push({ name, round: rounds.at() });
    }),
  );
  expect(taken.map(({ name }) => name)).toEqual(names);
  expect(new Set(taken.map(({ round }) => round)).size).toBe(4);
});

test('a turn asked for in a turn comes after those that waited already', async () => {
  const turn = createTurns();
  const order: string[] = [];
  const first = turn().then(async () => {
    order.push('first');
    await turn();
    order.push('first again');
  });
  const second = turn().then(() => void order.push('second'));
  await Promise.all([first, second]);
  expect(order).toEqual(['first', 'second', 'first again']);
});
