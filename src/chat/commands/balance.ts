import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const balance = laterCommand({
  intent: 'balance',
  roles: KITCHEN_ROLES,
  line: 're-balances a recipe to a target',
  examples: ['oat bars at least 20 g protein under 250 kcal'],
  title: 'I cannot re-balance a recipe to a target yet.',
  willDo:
    'amounts changed as little as possible so that every target holds, in measures this kitchen can measure.',
  today: 'ask for the figures at another cut, with something added or left out, or for a swap.',
  next: ['macros oat bar cut into 8'],
});
