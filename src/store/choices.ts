import type { ChoiceBook, ChoiceBooks, Choices } from '../kitchen/settings/choices.ts';
import type { Database } from './database.ts';
import { withStoreProblems } from './store-problem.ts';

/** What staff decided, kept in this database, one row a workspace. */
export function choiceBooksIn({ db }: Database): ChoiceBooks {
  return (workspace) =>
    withStoreProblems<ChoiceBook>({
      async get() {
        const row = await db
          .selectFrom('kitchen_choices')
          .select('choices')
          .where('workspace', '=', workspace)
          .executeTakeFirst();
        return row ? (JSON.parse(row.choices) as Choices) : {};
      },

      async put(choices, who, nowMs) {
        const row = { choices: JSON.stringify(choices), told_by: who, updated_ms: nowMs };
        await db
          .insertInto('kitchen_choices')
          .values({ workspace, ...row })
          .onConflict((conflict) => conflict.column('workspace').doUpdateSet(row))
          .execute();
      },
    });
}
