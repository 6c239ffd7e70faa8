import type { FormId } from '../../src/chat/forms/form.ts';
import type { Intent } from '../../src/chat/slots.ts';

/** Who may do what. s: kitchen staff, i: interns, a: athletes, g: guests and people of other workspaces. */
export const INTENT_ROWS: Readonly<Record<Intent, string>> = {
  scale: 'siag',
  measure: 'siag',
  macros: 'siag',
  swap: 'siag',
  allergens: 'siag',
  recipes: 'siag',
  help: 'siag',
  medical: 'siag',
  emergency: 'siag',
  unknown: 'siag',
  stock: 'sia',
  schedule: 'sia',
  fuel: 'sia',
  supplement: 'sia',
  balance: 'si',
  plan: 'si',
  shop: 'si',
  cost: 'si',
  made: 'si',
  served: 'si',
  tossed: 'si',
  counted: 'si',
  temperature: 'si',
  game: 'si',
  remind: 'si',
  trace: 'si',
  settings: 's',
};

export const FORM_ROWS: Readonly<Record<FormId, string>> = {
  batch: 'si',
  count: 'si',
  reading: 'si',
  game: 'si',
  needs: 'sia',
  settings: 's',
};
