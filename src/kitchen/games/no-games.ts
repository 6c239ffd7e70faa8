import { Problem } from '../../nutrition/problem.ts';
import type { GameBooks } from './game.ts';

/** For a kitchen without a memory: games cannot be kept, and the answer says why not. */
export const noGameBooks: GameBooks = () => {
  throw new Problem(
    'unavailable',
    'This kitchen has no memory: games cannot be kept.',
    'Start it with --db FILE or DATABASE_URL.',
  );
};
