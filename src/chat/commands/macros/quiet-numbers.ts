import type { KitchenSettings } from '../../../nutrition/book.ts';
import type { NutrientKey } from '../../../nutrition/nutrients.ts';
import type { Answer } from '../../answer.ts';
import type { PersonRole } from '../../request.ts';

/** Whether this asker sees calories: the kitchen's staff always, others when the dietitian has allowed it. */
export const seesEnergy = (role: PersonRole, settings: KitchenSettings): boolean =>
  role === 'staff' || role === 'intern' || settings.caloriesForAthletes;

/** The nutrients this asker may be shown. */
export const shownTo = (
  keys: readonly NutrientKey[],
  role: PersonRole,
  settings: KitchenSettings,
): readonly NutrientKey[] => (seesEnergy(role, settings) ? keys : keys.filter((key) => key !== 'energyKcal'));

/** The kind answer to an athlete who asked for calories only. */
export function energyIsForTheDietitian(settings: KitchenSettings, about: string): Answer {
  return {
    title: `Calories are something ${settings.contacts.dietitian} can go through with you.`,
    sections: [
      { kind: 'text', text: `I can tell you the protein, carbohydrate and other nutrients of ${about}.` },
    ],
    cautions: [],
    next: [{ label: 'Protein and carbohydrate', says: `protein and carbs in ${about}` }],
    audience: 'asker',
    data: { shown: false },
  };
}
