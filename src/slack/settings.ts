import type { InstallSettings } from './workspaces/installing.ts';

/** What whoever runs the service decides, once; read from the environment by `src/config.ts`. */
export interface SlackSettings {
  /** The one workspace served; absent when workspaces install the app themselves. */
  readonly botToken?: string;
  readonly install?: InstallSettings;
  /** Needed for HTTP; absent when only Socket Mode is used. */
  readonly signingSecret?: string;
  /** Present: Socket Mode. */
  readonly appToken?: string;
  /** Another address for Slack's API: a government workspace, or a test at the wire. */
  readonly apiUrl?: string;
  /** Member ids (U…) of kitchen staff and of interns; everyone else is an athlete or a guest. */
  readonly staff?: readonly string[];
  readonly interns?: readonly string[];
  /** Ids of user groups (S…) whose members are staff or interns, in whichever workspace the group is. */
  readonly staffGroups?: readonly string[];
  readonly internGroups?: readonly string[];
  /** Channel ids (C…) that reminders go to. Without the kitchen's they go to staff directly; the dietitian's is the kitchen's unless set. */
  readonly kitchenChannel?: string;
  readonly dietitianChannel?: string;
}
