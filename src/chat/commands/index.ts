import type { Command } from '../command.ts';
import { emergency } from './emergency.ts';
import { createHelp } from './help.ts';
import { medical } from './medical.ts';
import { createUnknown } from './unknown.ts';

/** Every command, in the order help lists them. */
export const COMMANDS: readonly Command[] = [
  createHelp(() => COMMANDS),
  createUnknown(() => COMMANDS),
  medical,
  emergency,
];
