import { TEAM_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const supplement = laterCommand({
  intent: 'supplement',
  roles: TEAM_ROLES,
  line: 'what to do before any supplement',
  examples: ['is this pre-workout ok'],
  title: 'Ask your sports dietitian or athletic trainer before any supplement.',
  willDo: 'the products and lots your dietitian has approved, and which lots a third party has tested.',
  today: 'I give no verdict on a product. Bring its label and lot number to the dietitian.',
  cautions: [
    'You answer for whatever is in your body, whatever the label says. A third-party test of a lot lowers the risk and does not remove it.',
  ],
});
