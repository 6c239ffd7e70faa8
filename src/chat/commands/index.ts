import type { Command } from '../command.ts';

/** Every command, in the order help lists them. */
export const COMMANDS: readonly Command[] = [];
