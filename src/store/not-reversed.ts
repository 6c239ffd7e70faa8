import { type Expression, expressionBuilder, type SqlBool, sql } from 'kysely';
import type { Schema } from './schema.ts';

/**
 * That no later event takes back the one this column names.
 * @param event the column with the event's id, as the query calls it: "e.id"
 */
export function notReversed(workspace: string, event: string): Expression<SqlBool> {
  const { not, exists, selectFrom } = expressionBuilder<Schema, never>();
  return not(
    exists(
      selectFrom('events as u')
        .select('u.id')
        .where('u.workspace', '=', workspace)
        .where('u.reverses', '=', sql.ref<string | null>(event)),
    ),
  );
}
