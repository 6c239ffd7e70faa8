/** A workspace that let us in. */
export interface Installation {
  readonly workspace: string;
  /** Who installed it, a member id; absent when the surface did not say. */
  readonly installedBy?: string;
  readonly installedMs: number;
  /** What the surface needs to act there, in its own format. Kept encrypted. */
  readonly credentials: string;
}

/** The workspaces that let us in, each with its credentials. */
export interface Installations {
  /** Keeps it; one that was there is replaced. */
  put(installation: Installation): Promise<void>;
  get(workspace: string): Promise<Installation | undefined>;
  /** Forgets the credentials; what the workspace recorded stays. True when there were some. */
  remove(workspace: string): Promise<boolean>;
  /** Names of all, in order. */
  workspaces(): Promise<readonly string[]>;
  /**
   * Encrypts with the newest key what an older one encrypted; a workspace whose key is gone is named and left as it is.
   */
  renew(): Promise<{ readonly renewed: number; readonly unreadable: readonly string[] }>;
}

/** A key that can be had once: what it names was done, is being done, or was asked for. */
export interface Claim {
  readonly workspace: string;
  readonly key: string;
  /** When it may be had again. */
  readonly untilMs: number;
}

/** Claims shared by all instances of the service. */
export interface Claims {
  /** True for the first who asks while it lasts, whichever instance asks. */
  claim(claim: Claim, nowMs: number): Promise<boolean>;
  /** Drops what has run out. */
  sweep(nowMs: number): Promise<void>;
}

/** Installs that were begun in a browser and are not finished. */
export interface InstallsBegun {
  put(state: string, options: string, untilMs: number): Promise<void>;
  /** The options given at the beginning, once; `undefined` when it was not begun here, is finished or has run out. */
  take(state: string, nowMs: number): Promise<string | undefined>;
}

/** What the service remembers of workspaces, whichever of its instances is asked. */
export interface WorkspaceMemory {
  readonly installations: Installations;
  readonly claims: Claims;
  readonly begun: InstallsBegun;
}
