import { Problem } from '../nutrition/problem.ts';
import type { PersonRole } from './request.ts';

/** Why a role may not ask this, and what it may do instead. */
export function notAllowed(role: PersonRole): Problem {
  if (role === 'guest') {
    return new Problem(
      'not_allowed',
      'That is for members of this team.',
      'Guests and people of other workspaces get recipe facts: recipes, amounts, swaps, allergens and nutrients of a recipe.',
    );
  }
  return new Problem('not_allowed', 'That is for kitchen staff.', 'Ask your dietitian or the kitchen staff.');
}
