import type { AllMiddlewareArgs, SlackEventMiddlewareArgs } from '@slack/bolt';
import type { ServedWorkspaces } from '../workspaces/served.ts';

type Uninstalled = SlackEventMiddlewareArgs<'app_uninstalled'> & AllMiddlewareArgs;
type Revoked = SlackEventMiddlewareArgs<'tokens_revoked'> & AllMiddlewareArgs;

/** What is done when a workspace throws the app out: its token is forgotten and its reminders stop. */
export interface Farewell {
  readonly workspaces: ServedWorkspaces;
  /** Stops what goes out to the workspace unasked. */
  readonly stopReminders: (workspace: string) => Promise<void>;
}

/** The app was removed from the workspace. */
export const leaveUninstalled =
  ({ workspaces, stopReminders }: Farewell) =>
  async ({ body }: Uninstalled): Promise<void> => {
    await workspaces.leave(body.team_id, body.event_time * 1000);
    await stopReminders(body.team_id);
  };

/** Tokens were revoked; a person's alone is nothing to us. */
export const leaveRevoked =
  (farewell: Farewell) =>
  async ({ event, body }: Revoked): Promise<void> => {
    if ((event.tokens?.bot ?? []).length === 0) return;
    await farewell.workspaces.leave(body.team_id, body.event_time * 1000);
    await farewell.stopReminders(body.team_id);
  };
