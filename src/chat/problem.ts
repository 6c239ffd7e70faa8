/** Surfaces fail in the same words as everything else, without knowing nutrition. */
export { Problem } from '../nutrition/problem.ts';
