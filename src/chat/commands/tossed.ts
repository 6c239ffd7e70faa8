import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const tossed = laterCommand({
  intent: 'tossed',
  roles: KITCHEN_ROLES,
  line: 'logs what was thrown out, and why',
  examples: ['tossed 3 bars, dropped'],
  title: 'Not logged: I cannot keep counts yet.',
  willDo: 'waste by batch with its reason, and an undo.',
  today: 'write count, batch date and the reason on the sheet.',
});
