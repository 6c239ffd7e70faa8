import type { WebClient } from '@slack/web-api';
import type { Clock } from '../kitchen/kitchen.ts';
import { errorCode } from './errors.ts';
import { createExpiringMap } from './expiring-map.ts';
import type { Log } from './log.ts';

/** Who is in a user group. */
export interface GroupMembers {
  /** Member ids; empty when the workspace has no such group or Slack does not say. */
  of(workspace: string, group: string, client: WebClient): Promise<readonly string[]>;
}

/** Slack allows some 20 of these calls a minute; somebody taken out of the group loses the role within this. */
const FRESH_MS = 2 * 60_000;
/** While Slack does not answer, yesterday's list is not used any more than an hour's. */
const STALE_MS = 60 * 60_000;
const MOST_GROUPS = 2_000;
/** The group is of another workspace: an answer, not a failure. */
const ELSEWHERE = new Set(['no_such_subteam', 'subteam_not_found']);

/** Looks members up at most every two minutes, one call for all who ask at once. */
export function createGroupMembers(clock: Clock, log: Log): GroupMembers {
  const fresh = createExpiringMap<Promise<readonly string[]>>(clock, MOST_GROUPS);
  const last = createExpiringMap<readonly string[]>(clock, MOST_GROUPS);

  async function lookUp(key: string, group: string, client: WebClient): Promise<readonly string[]> {
    try {
      const { users = [] } = await client.usergroups.users.list({ usergroup: group });
      last.set(key, users, STALE_MS);
      return users;
    } catch (error) {
      const code = errorCode(error);
      if (ELSEWHERE.has(code)) return [];
      log.warn({ code }, 'a user group could not be looked up');
      return last.get(key) ?? [];
    }
  }

  return {
    of(workspace, group, client) {
      const key = `${workspace}:${group}`;
      const known = fresh.get(key);
      if (known) return known;
      const looking = lookUp(key, group, client);
      fresh.set(key, looking, FRESH_MS);
      return looking;
    },
  };
}
