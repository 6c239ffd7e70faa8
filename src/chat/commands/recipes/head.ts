import type { CommandHead } from '../../command.ts';
import { ALL_ROLES } from '../../roles.ts';

/** Who may ask it and how help explains it. */
export const recipesHead: CommandHead = {
  intent: 'recipes',
  roles: ALL_ROLES,
  help: {
    line: 'the list, by kind or by need, or one recipe with its method',
    examples: ['recipes', 'nut-free recipes', 'recipe for oat bars'],
  },
};
