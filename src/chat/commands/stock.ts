import { TEAM_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const stock = laterCommand({
  intent: 'stock',
  roles: TEAM_ROLES,
  line: 'what is in the fridge and what to use first',
  examples: ['how many bars are left'],
  title: 'I do not know what is in the fridge: stock is not kept here yet.',
  willDo: 'every batch by use-by date, what to use first, what to throw out today.',
  today:
    'look at the labels in the fridge. At 41 °F (5 °C) or below, food held ready to eat is used within 7 days, and the day it was made is day 1 (FDA Food Code model); your local health code may ask for fewer.',
  cautions: ['No date on it: throw it out.'],
});
