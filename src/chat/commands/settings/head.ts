import type { CommandHead } from '../../command.ts';

/** Who may ask it and how help explains it. */
export const settingsHead: CommandHead = {
  intent: 'settings',
  roles: ['staff'],
  help: {
    line: "the kitchen's zone, hours, par, shelf life",
    examples: ['settings'],
  },
};
