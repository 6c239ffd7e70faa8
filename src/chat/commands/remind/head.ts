import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const remindHead: CommandHead = {
  intent: 'remind',
  roles: KITCHEN_ROLES,
  help: {
    line: 'a reminder; list, done, snooze',
    examples: [
      'remind us thursday 3pm to soak dates',
      'every monday 7:30 order milk',
      'reminders',
      'done R12',
    ],
  },
};
