import { Problem } from '../nutrition/problem.ts';
import type { Kitchen } from './kitchen.ts';
import { noLedgers } from './stock/no-ledgers.ts';

/** For a kitchen without a memory: recipes and macros work, anything that must be remembered says why not. */
export const noMemory: Pick<Kitchen, 'ledgers' | 'games' | 'reminders' | 'rosters' | 'remembers'> = {
  remembers: () => false,
  ledgers: noLedgers,
  games: () => {
    throw withoutMemory('no game can be kept or looked up');
  },
  reminders: () => {
    throw withoutMemory('no reminder can be kept or sent');
  },
  rosters: () => {
    throw withoutMemory("nobody's needs can be kept or looked up");
  },
};

const withoutMemory = (what: string): Problem =>
  new Problem(
    'unavailable',
    `This kitchen has no memory: ${what}.`,
    'Start it with --db FILE or DATABASE_URL.',
  );
