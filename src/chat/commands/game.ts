import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const game = laterCommand({
  intent: 'game',
  roles: KITCHEN_ROLES,
  line: 'adds or changes a game',
  examples: ['game Sat 2pm', 'game 12/5 away 9am leave 6:30'],
  title: 'Not saved: I cannot keep games yet.',
  willDo: 'games by hand or from a calendar file, with prep and packing times that move with them.',
  today:
    'put it in the team calendar, and prep on the day before so that slabs have time to set (common practice).',
});
