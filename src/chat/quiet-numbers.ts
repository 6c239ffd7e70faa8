import type { KitchenSettings } from '../nutrition/book.ts';
import type { NutrientKey } from '../nutrition/nutrients.ts';
import type { Answer } from './answer.ts';
import type { Request } from './request.ts';
import { KITCHEN_ROLES } from './roles.ts';

const isKitchen = ({ asker }: Request): boolean => KITCHEN_ROLES.includes(asker.role);

/**
 * Whether an answer to this request may hold calories. The kitchen's people see them where they alone read along;
 * in a channel athletes read too, so there only the dietitian's setting opens them, as for an athlete anywhere.
 * Guests of the team see none.
 */
export const seesEnergy = (request: Request, settings: KitchenSettings): boolean =>
  request.asker.role !== 'guest' &&
  (settings.caloriesForAthletes || (isKitchen(request) && request.isPrivate));

/** The nutrients that may be shown in answer to this request. */
export const shownTo = (
  keys: readonly NutrientKey[],
  request: Request,
  settings: KitchenSettings,
): readonly NutrientKey[] =>
  seesEnergy(request, settings) ? keys : keys.filter((key) => key !== 'energyKcal');

/** Where the kitchen's people find the calories that a channel does not show; nothing for anybody else. */
export const whereEnergyIs = (request: Request, settings: KitchenSettings): readonly string[] =>
  isKitchen(request) && !seesEnergy(request, settings)
    ? ['Calories stay out of channels; ask me in a direct message.']
    : [];

/** The kind answer to somebody who asked for nothing but calories where they are not shown. */
export function energyNotShown(
  request: Request,
  settings: KitchenSettings,
  about: string,
  instead = `protein and carbs in ${about}`,
): Answer {
  const [elsewhere] = whereEnergyIs(request, settings);
  return {
    title: elsewhere ?? `Calories are something ${settings.contacts.dietitian} can go through with you.`,
    sections: [
      {
        kind: 'text',
        text: `I can tell you the protein, carbohydrate and other nutrients of ${about} here.`,
      },
    ],
    cautions: [],
    next: [{ label: 'Protein and carbohydrate', says: instead }],
    audience: 'asker',
    data: { shown: false },
  };
}
