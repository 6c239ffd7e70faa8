import type { KitchenSettings } from '../../nutrition/book.ts';
import type { Choices } from './choices.ts';

/** The kitchen's settings with what staff chose over them. */
export function withChoices(settings: KitchenSettings, choices: Choices): KitchenSettings {
  const { par, kitchenChannel: _kitchen, dietitianChannel: _dietitian, ...rest } = choices;
  return { ...settings, ...rest, ...(par ? { par: new Map(Object.entries(par)) } : {}) };
}
