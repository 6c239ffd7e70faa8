import { TEAM_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const fuel = laterCommand({
  intent: 'fuel',
  roles: TEAM_ROLES,
  line: 'general ranges for eating around training',
  examples: ['snack after lift', 'what to eat 2 h before a game'],
  title: 'I cannot give amounts for your body and training yet: ask your sports dietitian.',
  willDo:
    'general ranges from the published position stands, with their source, and what in the fridge fits.',
  today:
    'a snack here is a carbohydrate source, a protein source and color from fruit, vegetables or a healthy fat (common practice). Pick one you know sits well with you.',
  next: ['recipes', 'protein in oat bars'],
});
