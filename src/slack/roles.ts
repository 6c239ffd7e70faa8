import type { WebClient } from '@slack/web-api';
import type { PersonRole } from '../chat/request.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import { errorCode } from './errors.ts';
import { createExpiringMap } from './expiring-map.ts';
import type { Log } from './log.ts';
import type { RoleList } from './role-list.ts';

export interface Person {
  readonly workspace: string;
  readonly user: string;
  /** The person's own workspace, where the payload says it: another one means a shared channel. */
  readonly homeWorkspace?: string;
}

export interface Roles {
  roleOf(person: Person, client: WebClient): Promise<PersonRole>;
}

/** Long enough to spare Slack a look-up a message, short enough that a removed member notices. */
const REMEMBER_MS = 60_000;

/**
 * The role of a person, looked up again every minute. Guests, people of other workspaces and people Slack cannot tell us
 * about are guests, also when they are listed; other members are athletes unless listed.
 */
export function createRoles(list: RoleList, clock: Clock, log: Log): Roles {
  const remembered = createExpiringMap<boolean>(clock, 5_000);
  return {
    async roleOf(person, client) {
      if (person.homeWorkspace && person.homeWorkspace !== person.workspace) return 'guest';
      const key = `${person.workspace}:${person.user}`;
      let isMember = remembered.get(key);
      if (isMember === undefined) {
        isMember = await isFullMember(person, client, log);
        if (isMember === undefined) return 'guest';
        remembered.set(key, isMember, REMEMBER_MS);
      }
      if (!isMember) return 'guest';
      return (await list.roleOf(person.workspace, person.user, client)) ?? 'athlete';
    },
  };
}

/** `undefined` when Slack did not say. */
async function isFullMember(person: Person, client: WebClient, log: Log): Promise<boolean | undefined> {
  try {
    const { user } = await client.users.info({ user: person.user });
    if (!user) return undefined;
    const isHere =
      user.team_id === undefined ||
      user.team_id === person.workspace ||
      (user.enterprise_user?.teams ?? []).includes(person.workspace);
    const isLimited = user.is_restricted || user.is_ultra_restricted || user.is_stranger;
    return isHere && !isLimited && !user.deleted && !user.is_bot;
  } catch (error) {
    log.warn({ code: errorCode(error) }, 'users.info failed; the person counts as a guest');
    return undefined;
  }
}
