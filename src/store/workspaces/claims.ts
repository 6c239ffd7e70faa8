import type { Claims } from '../../kitchen/workspaces/workspaces.ts';
import type { Database } from '../database.ts';
import { brieflyDurable } from '../dialect/briefly-durable.ts';
import { withStoreProblems } from '../store-problem.ts';
import { hashOf } from './hash-of.ts';

/** Claims of all instances that share this database: the row's key lets one of them in. */
export function claimsIn({ db, engine }: Database): Claims {
  return withStoreProblems<Claims>({
    claim: ({ workspace, key, untilMs }, nowMs) =>
      brieflyDurable(db, engine, async (connection) => {
        const had = await connection
          .insertInto('claims')
          .values({ workspace, key_hash: hashOf(key), until_ms: untilMs })
          .onConflict((conflict) =>
            conflict
              .columns(['workspace', 'key_hash'])
              .doUpdateSet({ until_ms: untilMs })
              .where('claims.until_ms', '<=', nowMs),
          )
          .returning('workspace')
          .executeTakeFirst();
        return had !== undefined;
      }),

    sweep: (nowMs) =>
      brieflyDurable(db, engine, async (connection) => {
        await connection.deleteFrom('claims').where('until_ms', '<=', nowMs).execute();
      }),
  });
}
