import { TEAM_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const schedule = laterCommand({
  intent: 'schedule',
  roles: TEAM_ROLES,
  line: 'games and prep of the week',
  examples: ['schedule', 'when is the next game'],
  title: 'I do not know the schedule yet.',
  willDo: "games, prep times and checks of the week in the kitchen's time zone.",
  today:
    'ask the dietitian or look at the team calendar. Prep for a game is usually the day before (common practice).',
});
