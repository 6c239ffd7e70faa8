import type { Asked } from '../command.ts';
import { notAllowed } from '../not-allowed.ts';
import { KITCHEN_ROLES } from '../roles.ts';

/** The pantry is the kitchen's own: athletes ask for what can be eaten. Throws `not_allowed`. */
export function forKitchen({ request }: Asked): void {
  const { role } = request.asker;
  if (!KITCHEN_ROLES.includes(role)) throw notAllowed(role);
}
