export type PersonRole = 'staff' | 'intern' | 'athlete' | 'guest';

export interface Asker {
  readonly role: PersonRole;
  /** The kitchen's code for the person (WP-07) or the workspace's user id; never a name. */
  readonly who: string;
  readonly workspace: string;
}

/** A file that came with a message. */
export interface Attached {
  readonly fileName: string;
  readonly kind: 'calendar' | 'table' | 'other';
  /** Its bytes; throws a Problem when they are too many or cannot be had. */
  open(): Promise<Uint8Array>;
}

/** One message from one person in one conversation at one instant. */
export interface Request {
  readonly text: string;
  readonly asker: Asker;
  /** Thread, direct message or terminal session: what a follow-up leans on. */
  readonly conversation: string;
  /** True where only the asker reads the answer: direct message, ephemeral reply, terminal. */
  readonly isPrivate: boolean;
  readonly attached?: Attached;
  /** The surface's own name for this delivery, if it has one: what is delivered twice is logged once. */
  readonly requestKey?: string;
  /** Epoch milliseconds, from the injected clock. */
  readonly nowMs: number;
}
