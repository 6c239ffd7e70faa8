import type { Kitchen } from '../kitchen.ts';
import { withChoices } from './with-choices.ts';

/** The kitchen as one workspace has set it. */
export type KitchenHere = (workspace: string) => Promise<Kitchen>;

/**
 * Looks up what a workspace chose each time, so that a change counts at once in every instance. The book stays the same
 * object while the choices do: others keep what they worked out by it. Without a memory to look in, or while it cannot be
 * read, the kitchen is as its folder says, or as it was known last.
 */
export function kitchensHere(kitchen: Kitchen, report: (error: unknown) => void): KitchenHere {
  const { choices } = kitchen;
  if (!choices) return async () => kitchen;
  const known = new Map<string, { readonly key: string; readonly kitchen: Kitchen }>();
  return async (workspace) => {
    const before = known.get(workspace);
    try {
      const chosen = await choices(workspace).get();
      const key = JSON.stringify(chosen);
      if (before?.key === key) return before.kitchen;
      const settings = withChoices(kitchen.book.settings, chosen);
      const here = key === '{}' ? kitchen : { ...kitchen, book: { ...kitchen.book, settings } };
      known.set(workspace, { key, kitchen: here });
      return here;
    } catch (error) {
      report(error);
      return before?.kitchen ?? kitchen;
    }
  };
}
