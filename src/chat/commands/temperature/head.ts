import type { CommandHead } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const temperatureHead: CommandHead = {
  intent: 'temperature',
  roles: KITCHEN_ROLES,
  help: {
    line: 'logs a reading and says what to do now; the log as a file',
    examples: [
      'fridge a 38F',
      'fridge b 44F moved all to fridge a',
      'cooling 78F after 2 hours',
      'power out 3 hours',
      'temperature log',
    ],
  },
};
