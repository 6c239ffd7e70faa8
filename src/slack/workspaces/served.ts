/** Who the bot is in a workspace. */
export interface BotIdentity {
  readonly token: string;
  readonly botId: string;
  readonly botUserId: string;
  readonly workspace: string;
  /** Member id of who installed the app, where Slack told us. */
  readonly installedBy?: string;
}

/** The workspaces this service answers. */
export interface ServedWorkspaces {
  /** `undefined` for a workspace that did not let us in. */
  identityOf(workspace: string): Promise<BotIdentity | undefined>;
  all(): Promise<readonly string[]>;
  /** The workspace threw us out at `atMs`; its token is forgotten. An installation made since then stays. */
  leave(workspace: string, atMs: number): Promise<void>;
}

/** The one workspace whose token is in the settings. */
export function oneWorkspace(identity: BotIdentity): ServedWorkspaces {
  let isServed = true;
  return {
    identityOf: async (workspace) => (isServed && workspace === identity.workspace ? identity : undefined),
    all: async () => (isServed ? [identity.workspace] : []),
    async leave(workspace) {
      if (workspace === identity.workspace) isServed = false;
    },
  };
}
