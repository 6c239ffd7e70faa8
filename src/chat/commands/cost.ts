import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const cost = laterCommand({
  intent: 'cost',
  roles: KITCHEN_ROLES,
  line: 'says what a batch or a piece costs',
  examples: ['cost of 40 oat bars'],
  title: 'I cannot work out costs yet.',
  willDo: 'cost per piece, per batch and per game from the prices of the packages.',
  today: 'scale the recipe and price the amounts from your last invoice.',
  next: ['40 oat bars'],
});
