import type { Lexed } from './lexed.ts';

/** A room full of people asks in a few hundred shapes; a longer message seldom has the shape of another. */
const MOST_SHAPES = 4_096;
const LONGEST_SHAPE = 80;

/**
 * Remembers what was decided from a message's shape alone: "40 oat bars" and "24 moon bars" are the same question, and
 * hundreds of patterns need not be tried again.
 * @param decide looks at nothing but `shape` and what follows from it
 */
export function byShape<T>(decide: (lexed: Lexed) => T): (lexed: Lexed) => T {
  const decided = new Map<string, T>();
  return (lexed) => {
    const { shape } = lexed;
    if (shape.length > LONGEST_SHAPE) return decide(lexed);
    const known = decided.get(shape);
    if (known !== undefined || decided.has(shape)) return known as T;
    if (decided.size >= MOST_SHAPES) decided.clear();
    const found = decide(lexed);
    decided.set(shape, found);
    return found;
  };
}
