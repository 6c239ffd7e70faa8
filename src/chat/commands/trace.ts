import { KITCHEN_ROLES } from '../roles.ts';
import { laterCommand } from './later.ts';

export const trace = laterCommand({
  intent: 'trace',
  roles: KITCHEN_ROLES,
  line: 'from a product lot to the batches it went into',
  examples: ['trace lot L42', 'trace oat bars tuesday'],
  title: 'I cannot trace lots yet: batches are not kept here.',
  willDo: 'from a lot to its batches and back, who made them and how many were served.',
  today:
    'look at the batch sheet. If a product is recalled, set aside everything that may hold it and tell the dietitian now.',
});
