import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const made = laterCommand({
  intent: 'made',
  roles: KITCHEN_ROLES,
  line: 'logs a batch that was made',
  examples: ['made 40 oat bars'],
  title: 'Not logged: I cannot keep batches yet.',
  willDo: 'a batch with a short code, its allergens, when it is set, its use-by date and a label to copy.',
  today:
    'write name, date made, use by and contains on the container. Refrigerated food: at most 7 days at 41 °F (5 °C) or below, the day made is day 1 (FDA Food Code model); your local health code may ask for fewer.',
  next: ['allergens oat bars'],
});
