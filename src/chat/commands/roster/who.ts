import { isPersonCode } from '../../../kitchen/roster/codes.ts';
import type { PersonNeeds, Roster } from '../../../kitchen/roster/roster.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Asked } from '../../command.ts';

export const rosterOf = ({ kitchen, request }: Asked): Roster => kitchen.rosters(request.asker.workspace);

/** Staff only: what one person needs is nobody else's business. Throws `not_allowed`. */
export function staffOnly({ request }: Asked): void {
  if (request.asker.role === 'staff') return;
  throw new Problem(
    'not_allowed',
    'What one person needs is between that person and the staff.',
    'For your own, write "show my needs". Counts are in the plan: "plan Saturday 44".',
  );
}

/**
 * The code a request is about: the asker's own for "my needs", else the one that was said, which staff may.
 * Throws `needs_more` when the asker has no code, `not_allowed`, `bad_quantity` for what is no code.
 */
export function codeMeant(asked: Asked): string {
  const { who, role } = asked.request.asker;
  const said = asked.slots.who;
  if (typeof said !== 'string' || said === 'me') {
    if (role === 'guest')
      throw new Problem('not_allowed', 'Needs are kept for the team only.', 'Ask the kitchen staff.');
    if (isPersonCode(who.toUpperCase())) return who.toUpperCase();
    throw new Problem('needs_more', 'Whose needs?', 'Start with your code, such as --who WP-07.');
  }
  const code = said.toUpperCase();
  if (code !== who.toUpperCase()) staffOnly(asked);
  if (isPersonCode(code)) return code;
  throw new Problem('bad_quantity', 'That is not a code.', 'Write a code such as WP-07; never a name.');
}

/** What is known of a person; a workspace user id may stand for a code. */
export const personMeant = (asked: Asked): Promise<PersonNeeds | undefined> =>
  rosterOf(asked).get(codeMeant(asked));
