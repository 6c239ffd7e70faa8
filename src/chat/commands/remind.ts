import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const remind = laterCommand({
  intent: 'remind',
  roles: KITCHEN_ROLES,
  line: 'reminds the kitchen in time',
  examples: ['remind us thursday 3pm to soak dates'],
  title: 'Not set: I cannot send reminders yet.',
  willDo: 'reminders to a role, once or repeating, with done, snooze and who has it.',
  today: "set an alarm on the kitchen's own phone or clock.",
});
