import type { KitchenHere } from '../../kitchen/settings/kitchens-here.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import type { Need } from '../../nutrition/allergens.ts';
import type { NextStep, Section } from '../answer.ts';
import type { Asked } from '../command.ts';
import type { Option } from '../forms/form.ts';
import type { Request } from '../request.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import { athleteHome } from './athlete.ts';
import { guestHome } from './guest.ts';
import { kitchenHome } from './kitchen.ts';

/** A part of somebody's home, in reading order. */
export type HomePart =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'section'; readonly section: Section }
  | { readonly kind: 'caution'; readonly text: string }
  | { readonly kind: 'steps'; readonly steps: readonly NextStep[] }
  /** "Find me one without…": what is chosen comes back as `without`. */
  | {
      readonly kind: 'without';
      readonly label: string;
      readonly options: readonly Option[];
      readonly chosen: readonly string[];
    };

/** What a person sees on opening the kitchen's place, before asking anything. Only that person sees it. */
export interface HomePage {
  readonly title: string;
  /** "Fri Dec 4, 9:05 am CST": when it was true. Not a change by itself. */
  readonly asOf: string;
  readonly parts: readonly HomePart[];
}

/** The home of whoever asks; `without` is what an athlete wants left out, absent for what they told us before. */
export type Homes = (request: Request, without?: Without) => Promise<HomePage>;
export type Without = readonly Need[];

export function createHomes(here: KitchenHere): Homes {
  return async (request, without) => {
    const kitchen = await here(request.asker.workspace);
    const asked: Asked = { request, kitchen, slots: {}, conversation: {} };
    const { settings } = kitchen.book;
    return {
      title: settings.name,
      asOf: sayInstant(request.nowMs, settings.timeZone),
      parts: await partsFor(asked, without),
    };
  };
}

function partsFor(asked: Asked, without: readonly Need[] | undefined): Promise<readonly HomePart[]> {
  const { role } = asked.request.asker;
  if (KITCHEN_ROLES.includes(role)) return kitchenHome(asked);
  return role === 'athlete' ? athleteHome(asked, without) : guestHome(asked);
}
