import type { InstallsBegun } from '../../kitchen/workspaces/workspaces.ts';
import type { Database } from '../database.ts';
import { withStoreProblems } from '../store-problem.ts';
import { hashOf } from './hash-of.ts';

/** Installs begun at any instance that shares this database. */
export function installsBegunIn({ db }: Database): InstallsBegun {
  return withStoreProblems<InstallsBegun>({
    async put(state, options, untilMs) {
      await db
        .insertInto('installs_begun')
        .values({ state_hash: hashOf(state), options, until_ms: untilMs })
        .execute();
    },

    async take(state, nowMs) {
      await db.deleteFrom('installs_begun').where('until_ms', '<=', nowMs).execute();
      const row = await db
        .deleteFrom('installs_begun')
        .where('state_hash', '=', hashOf(state))
        .returning('options')
        .executeTakeFirst();
      return row?.options;
    },
  });
}
