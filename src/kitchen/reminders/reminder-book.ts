import type { Reminder, ReminderRule, ReminderWall } from './reminder.ts';

/** A reminder that is not written down yet. */
export type NewReminder = Pick<
  Reminder,
  'key' | 'kind' | 'audience' | 'dueMs' | 'helpsUntilMs' | 'about' | 'planned'
> & { readonly wall?: ReminderWall };

/** What planning again changed. */
export interface Replanned {
  readonly added: number;
  readonly moved: number;
  readonly cancelled: number;
}

/** A new time for a reminder, chosen by a person. */
export interface NewTime {
  readonly dueMs: number;
  readonly helpsUntilMs: number;
  readonly wall?: ReminderWall;
}

/** The reminders of one workspace, as people and the planner see them. */
export interface ReminderBook {
  /**
   * Makes what is still to come match `wanted`: new keys are added, times that changed move, and planned reminders
   * of the future that are no longer wanted are cancelled. What a person changed, and what was told, stays as it is.
   */
  plan(wanted: readonly NewReminder[], nowMs: number): Promise<Replanned>;
  /** Writes one down; the same key again gives back the one that is there. */
  add(reminder: NewReminder, nowMs: number): Promise<Reminder>;
  byKey(key: string): Promise<Reminder | undefined>;
  byCode(code: string): Promise<Reminder | undefined>;
  /** Not told yet, earliest first. */
  upcoming(most: number): Promise<readonly Reminder[]>;
  /** Told and not done, while it still helps; latest told first. */
  open(nowMs: number): Promise<readonly Reminder[]>;
  /** People's own ones that hang on a game and move with it: to come, told or called off in the last two weeks. */
  tied(nowMs: number): Promise<readonly Reminder[]>;
  /** Could not be delivered since then, with the reason the surface gave; latest first. */
  undelivered(sinceMs: number): Promise<readonly { readonly reminder: Reminder; readonly problem: string }[]>;
  /** Where the messages that told of it stand, as the surface wrote it down when they were sent. */
  toldAt(id: string): Promise<readonly string[]>;
  /** "I've got it". False when somebody else has it already. */
  take(id: string, who: string): Promise<boolean>;
  done(id: string, who: string, nowMs: number): Promise<void>;
  /** False when it was told already. */
  cancel(id: string, who: string): Promise<boolean>;
  /** Moves one that was not told yet; false when it was. */
  move(id: string, time: NewTime, keptBy: 'person' | 'planner'): Promise<boolean>;
  /** Waiting ones whose wall time was meant in another zone than this. */
  offZone(zone: string): Promise<readonly Reminder[]>;
  rules(): Promise<readonly ReminderRule[]>;
  addRule(rule: Omit<ReminderRule, 'id'>, nowMs: number): Promise<ReminderRule>;
  removeRule(id: string): Promise<void>;
}

export type ReminderBooks = (workspace: string) => ReminderBook;
