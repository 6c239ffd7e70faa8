import { Problem } from '../../nutrition/problem.ts';
import type { Ledgers } from './ledger.ts';

/** For a kitchen without a memory: recipes and macros work, anything that must be remembered says why not. */
export const noLedgers: Ledgers = () => {
  throw new Problem(
    'unavailable',
    'This kitchen has no memory: nothing can be logged or looked up in stock.',
    'Start it with --db FILE or DATABASE_URL.',
  );
};
