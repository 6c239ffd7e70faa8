import { Problem } from '../nutrition/problem.ts';

/** What is remembered; `undefined` in a kitchen without a memory. Anything else that is wrong is told. */
export async function ifKept<T>(read: () => Promise<T>): Promise<T | undefined> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof Problem && error.code === 'unavailable') return undefined;
    throw error;
  }
}
