import type { Selectable } from 'kysely';
import type { Installation, Installations } from '../../kitchen/workspaces/workspaces.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Database } from '../database.ts';
import { present } from '../present.ts';
import type { InstallationsTable } from '../schema.ts';
import { withStoreProblems } from '../store-problem.ts';
import type { KeyRing } from './key-ring.ts';

/** The workspaces of this database, their credentials under the keys of `ring`. */
export function installationsIn({ db }: Database, ring: KeyRing): Installations {
  return withStoreProblems<Installations>({
    async put({ workspace, installedBy, installedMs, credentials }) {
      const sealed = ring.seal(credentials, boundTo(workspace));
      const row = {
        installed_by: installedBy ?? null,
        installed_ms: installedMs,
        credentials: sealed.text,
        key_name: sealed.keyName,
      };
      await db
        .insertInto('installations')
        .values({ workspace, ...row })
        .onConflict((conflict) => conflict.column('workspace').doUpdateSet(row))
        .execute();
    },

    async get(workspace) {
      const row = await db
        .selectFrom('installations')
        .selectAll()
        .where('workspace', '=', workspace)
        .executeTakeFirst();
      if (!row) return undefined;
      const credentials = opened(row, ring);
      if (credentials === undefined) throw unreadable(workspace);
      return installationOf(row, credentials);
    },

    async remove(workspace) {
      const { numDeletedRows } = await db
        .deleteFrom('installations')
        .where('workspace', '=', workspace)
        .executeTakeFirst();
      return numDeletedRows > 0n;
    },

    async workspaces() {
      const rows = await db.selectFrom('installations').select('workspace').orderBy('workspace').execute();
      return rows.map(({ workspace }) => workspace);
    },

    async renew() {
      const old = await db
        .selectFrom('installations')
        .selectAll()
        .where('key_name', '!=', ring.newest)
        .orderBy('workspace')
        .execute();
      const unreadable: string[] = [];
      let renewed = 0;
      for (const row of old) {
        const credentials = opened(row, ring);
        if (credentials === undefined) {
          unreadable.push(row.workspace);
          continue;
        }
        const sealed = ring.seal(credentials, boundTo(row.workspace));
        const { numUpdatedRows } = await db
          .updateTable('installations')
          .set({ credentials: sealed.text, key_name: sealed.keyName })
          .where('workspace', '=', row.workspace)
          // Installed again meanwhile: what is there now is newer.
          .where('credentials', '=', row.credentials)
          .executeTakeFirst();
        renewed += Number(numUpdatedRows);
      }
      return { renewed, unreadable };
    },
  });
}

const boundTo = (workspace: string): string => `installation ${workspace}`;

const opened = (row: Selectable<InstallationsTable>, ring: KeyRing): string | undefined =>
  ring.open({ keyName: row.key_name, text: row.credentials }, boundTo(row.workspace));

const installationOf = (row: Selectable<InstallationsTable>, credentials: string): Installation => ({
  workspace: row.workspace,
  ...present('installedBy', row.installed_by),
  installedMs: row.installed_ms,
  credentials,
});

const unreadable = (workspace: string): Problem =>
  new Problem(
    'unavailable',
    `The token of workspace ${workspace} cannot be decrypted.`,
    'Put the key it was encrypted with back into BATCHBELL_TOKEN_KEYS, or install the app there again.',
  );
