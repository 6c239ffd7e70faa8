import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const shop = laterCommand({
  intent: 'shop',
  roles: KITCHEN_ROLES,
  line: 'lists what to buy',
  examples: ['shopping list for 40 oat bars'],
  title: 'I cannot write a shopping list yet.',
  willDo: 'what is needed minus what is on the shelf, rounded up to packages, by store section.',
  today: 'scale the recipe: its amounts are what you need before you subtract your shelf.',
  cautions: ['A package of another brand needs a new look at its label before it is used.'],
  next: ['40 oat bars'],
});
