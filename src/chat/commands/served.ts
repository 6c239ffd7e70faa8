import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const served = laterCommand({
  intent: 'served',
  roles: KITCHEN_ROLES,
  line: 'logs what was handed out',
  examples: ['served 12 oat bars'],
  title: 'Not logged: I cannot keep counts yet.',
  willDo: 'counts by batch, the earliest use-by first, and an undo.',
  today: 'write count, time and batch date on the sheet at the station.',
});
