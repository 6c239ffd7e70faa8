import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const counted = laterCommand({
  intent: 'counted',
  roles: KITCHEN_ROLES,
  line: 'corrects the count to what is there',
  examples: ['counted 25 oat bars'],
  title: 'Not logged: I cannot keep counts yet.',
  willDo: 'a count that corrects the stock and says what changed.',
  today: 'write the count with date and time on the sheet.',
});
