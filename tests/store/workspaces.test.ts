import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Installation } from '../../src/kitchen/workspaces/workspaces.ts';
import type { Database } from '../../src/store/database.ts';
import { claimsIn } from '../../src/store/workspaces/claims.ts';
import { installationsIn } from '../../src/store/workspaces/installations.ts';
import { installsBegunIn } from '../../src/store/workspaces/installs-begun.ts';
import { keyRing } from '../../src/store/workspaces/key-ring.ts';
import { freshDatabase } from '../helpers/database.ts';

const [OLD, NEW, OTHER] = [randomBytes(32), randomBytes(32), randomBytes(32)] as [Buffer, Buffer, Buffer];
let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

const herons = (more: Partial<Installation> = {}): Installation => ({
  workspace: 'T0HERONS',
  installedBy: 'U0FIRST',
  installedMs: 1_789_000_000_000,
  credentials: '{"token":"xoxb-herons"}',
  ...more,
});
const rowOf = (workspace: string) =>
  database.db
    .selectFrom('installations')
    .selectAll()
    .where('workspace', '=', workspace)
    .executeTakeFirstOrThrow();

describe('installations', () => {
  test('are kept, replaced, listed and forgotten, each workspace for itself', async () => {
    const installations = installationsIn(database, keyRing([NEW]));
    expect(await installations.get('T0HERONS')).toBeUndefined();
    await installations.put(herons());
    await installations.put(herons({ workspace: 'T0TERNS', credentials: 'terns' }));
    await installations.put(herons({ credentials: 'again', installedBy: 'U0SECOND' }));
    expect(await installations.get('T0HERONS')).toEqual(
      herons({ credentials: 'again', installedBy: 'U0SECOND' }),
    );
    expect(await installations.workspaces()).toEqual(['T0HERONS', 'T0TERNS']);
    expect(await installations.remove('T0TERNS')).toBe(true);
    expect(await installations.remove('T0TERNS')).toBe(false);
    expect(await installations.workspaces()).toEqual(['T0HERONS']);
  });

  test('hold no token that can be read in the database, and never the same text twice', async () => {
    const installations = installationsIn(database, keyRing([NEW]));
    await installations.put(herons());
    const first = await rowOf('T0HERONS');
    await installations.put(herons());
    const second = await rowOf('T0HERONS');
    expect(JSON.stringify([first, second])).not.toContain('xoxb');
    expect(first.credentials).not.toBe(second.credentials);
  });

  test('moved to another workspace, or changed by a byte, cannot be read', async () => {
    const installations = installationsIn(database, keyRing([NEW]));
    await installations.put(herons());
    const { credentials, key_name } = await rowOf('T0HERONS');
    const moved = { workspace: 'T0THIEF', installed_by: null, installed_ms: 0, credentials, key_name };
    await database.db.insertInto('installations').values(moved).execute();
    await expect(installations.get('T0THIEF')).rejects.toMatchObject({ code: 'unavailable' });
    await installations.remove('T0THIEF');
    const bytes = Buffer.from(credentials, 'base64url');
    bytes[bytes.length - 1] = (bytes[bytes.length - 1] ?? 0) ^ 1;
    await database.db
      .updateTable('installations')
      .set({ credentials: bytes.toString('base64url') })
      .where('workspace', '=', 'T0HERONS')
      .execute();
    await expect(installations.get('T0HERONS')).rejects.toMatchObject({ code: 'unavailable' });
  });

  test('move to a new key, and are read with either meanwhile', async () => {
    await installationsIn(database, keyRing([OLD])).put(herons());
    const both = installationsIn(database, keyRing([NEW, OLD]));
    expect(await both.get('T0HERONS')).toEqual(herons());
    expect(await both.renew()).toEqual({ renewed: 1, unreadable: [] });
    expect(await both.renew()).toEqual({ renewed: 0, unreadable: [] });
    expect(await installationsIn(database, keyRing([NEW])).get('T0HERONS')).toEqual(herons());
    await expect(installationsIn(database, keyRing([OLD])).get('T0HERONS')).rejects.toThrow('T0HERONS');
  });

  test('whose key is gone are named and left as they are', async () => {
    await installationsIn(database, keyRing([OLD])).put(herons());
    const before = await rowOf('T0HERONS');
    expect(await installationsIn(database, keyRing([OTHER])).renew()).toEqual({
      renewed: 0,
      unreadable: ['T0HERONS'],
    });
    expect(await rowOf('T0HERONS')).toEqual(before);
  });
});

describe('claims', () => {
  test('are had once, by one of many instances asking at once, and again when they have run out', async () => {
    const instances = [claimsIn(database), claimsIn(database), claimsIn(database)];
    const ask = (key: string, nowMs: number, workspace = 'T1') =>
      Promise.all(instances.map((one) => one.claim({ workspace, key, untilMs: nowMs + 100 }, nowMs)));
    const had = (answers: boolean[]) => answers.filter(Boolean).length;
    expect(had(await ask('event:1', 1_000))).toBe(1);
    expect(had(await ask('event:1', 1_099))).toBe(0);
    expect(had(await ask('event:1', 1_100))).toBe(1);
    expect(had(await ask('event:1', 1_100, 'T2'))).toBe(1);
    expect(had(await ask('event:2', 1_100))).toBe(1);
  });

  test('hold no words, and those that have run out are dropped', async () => {
    const claims = claimsIn(database);
    await claims.claim({ workspace: 'T1', key: 'press:can I eat the cherry bars', untilMs: 5_000 }, 1);
    const rows = await database.db.selectFrom('claims').selectAll().execute();
    expect(JSON.stringify(rows)).not.toContain('cherry');
    await claims.sweep(4_999);
    expect(await database.db.selectFrom('claims').selectAll().execute()).toHaveLength(1);
    await claims.sweep(5_000);
    expect(await database.db.selectFrom('claims').selectAll().execute()).toEqual([]);
  });
});

describe('installs that were begun', () => {
  test('are finished once, at any instance, and not after their time', async () => {
    const [here, there] = [installsBegunIn(database), installsBegunIn(database)];
    await here.put('state-1', '{"scopes":[]}', 100);
    await here.put('state-2', '{}', 100);
    expect(await there.take('guessed', 50)).toBeUndefined();
    expect(await there.take('state-1', 50)).toBe('{"scopes":[]}');
    expect(await here.take('state-1', 50)).toBeUndefined();
    expect(await here.take('state-2', 100)).toBeUndefined();
  });
});
