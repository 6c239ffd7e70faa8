import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const plan = laterCommand({
  intent: 'plan',
  roles: KITCHEN_ROLES,
  line: 'plans a production for a group',
  examples: ['plan Saturday 44 travelling 5 nut free 2 coeliac'],
  title: 'I cannot make a production plan yet, so nothing was planned.',
  willDo: 'the fewest variants that feed everybody, in which order to make them, how many, and what to buy.',
  today: 'check each recipe against each need, then scale it to the number of people.',
  cautions: ['Have the dietitian check the allergen list of everybody who will eat.'],
  next: ['nut-free recipes', '44 oat bars'],
});
