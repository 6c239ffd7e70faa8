import type { WebClient } from '@slack/web-api';
import type { GroupMembers } from './group-members.ts';
import type { ServedWorkspaces } from './workspaces/served.ts';

export type KitchenRole = 'staff' | 'intern';

/** Who a workspace says works in its kitchen. */
export interface RoleList {
  roleOf(workspace: string, user: string, client: WebClient): Promise<KitchenRole | undefined>;
  /** Member ids of staff, each once; empty when the workspace named nobody. */
  staffOf(workspace: string, client: WebClient): Promise<readonly string[]>;
}

/** Member ids from the settings, the same in every workspace of this service. */
export function listedRoles(staff: readonly string[] = [], interns: readonly string[] = []): RoleList {
  const roles = new Map<string, KitchenRole>([
    ...interns.map((id) => [id, 'intern'] as const),
    ...staff.map((id) => [id, 'staff'] as const),
  ]);
  return { roleOf: async (_workspace, user) => roles.get(user), staffOf: async () => staff };
}

/** The members of user groups (S…) of the workspace. */
export function groupRoles(
  members: GroupMembers,
  staffGroups: readonly string[] = [],
  internGroups: readonly string[] = [],
): RoleList {
  const inOne = async (groups: readonly string[], workspace: string, client: WebClient) => {
    const all = await Promise.all(groups.map((group) => members.of(workspace, group, client)));
    return [...new Set(all.flat())];
  };
  return {
    async roleOf(workspace, user, client) {
      if ((await inOne(staffGroups, workspace, client)).includes(user)) return 'staff';
      return (await inOne(internGroups, workspace, client)).includes(user) ? 'intern' : undefined;
    },
    staffOf: (workspace, client) => inOne(staffGroups, workspace, client),
  };
}

/** Whoever installed the app is its first staff. */
export function installerRole(workspaces: ServedWorkspaces): RoleList {
  const installerOf = async (workspace: string): Promise<string | undefined> =>
    (await workspaces.identityOf(workspace))?.installedBy;
  return {
    roleOf: async (workspace, user) => ((await installerOf(workspace)) === user ? 'staff' : undefined),
    async staffOf(workspace) {
      const installer = await installerOf(workspace);
      return installer === undefined ? [] : [installer];
    },
  };
}

/** The highest role any of the lists gives. */
export function anyOf(...lists: readonly RoleList[]): RoleList {
  return {
    async roleOf(workspace, user, client) {
      let found: KitchenRole | undefined;
      for (const list of lists) {
        found = (await list.roleOf(workspace, user, client)) ?? found;
        if (found === 'staff') return found;
      }
      return found;
    },
    async staffOf(workspace, client) {
      const all = await Promise.all(lists.map((list) => list.staffOf(workspace, client)));
      return [...new Set(all.flat())];
    },
  };
}
