import type { ClockTime, WallTime } from '../time/zone.ts';

export const REMINDER_KINDS = [
  'prep',
  'pack',
  'stock_check',
  'expiring',
  'expired',
  'reading',
  'still_out',
  'week',
  'calendar',
  'own',
  'escalation',
  'missed',
] as const;
export type ReminderKind = (typeof REMINDER_KINDS)[number];

/** Who is told: a role, never a person who may have left for the weekend. */
export type ReminderAudience = 'kitchen' | 'dietitian';

/** Where staff chose that each role is told. */
export type ReminderPlaces = Readonly<Partial<Record<ReminderAudience, string>>>;

export type ReminderState = 'pending' | 'claimed' | 'queued' | 'sent' | 'missed' | 'cancelled';

/** The wall-clock time a reminder hangs on: when the kitchen's zone moves, it moves along. */
export interface ReminderWall extends WallTime {
  readonly zone: string;
}

/** One occurrence of something to be told. `key` names it: the same thing is never planned twice. */
export interface Reminder {
  readonly id: string;
  readonly workspace: string;
  /** E.g. `stock_check:2026-12-05`, `prep:<game id>`, `own:<rule id>:2026-12-07T07:30`. */
  readonly key: string;
  /** What people say to name it: R12. */
  readonly code: string;
  readonly kind: ReminderKind;
  readonly audience: ReminderAudience;
  readonly dueMs: number;
  /** After this instant telling it helps nobody; it is then reported as missed. */
  readonly helpsUntilMs: number;
  /** What it is about, for composing its text when it is sent: ids and words, plain JSON. */
  readonly about: Readonly<Record<string, string | number | boolean>>;
  readonly state: ReminderState;
  /** True while the planner keeps it; false when a person made or changed it. */
  readonly planned: boolean;
  /** Absent for "in 20 min": that is an instant, whatever the clock on the wall shows. */
  readonly wall?: ReminderWall;
  readonly sentMs?: number;
  /** Who said "I've got it", who said it is done, and when. */
  readonly takenBy?: string;
  readonly doneBy?: string;
  readonly doneMs?: number;
}

/** A person's own repeated reminder; its occurrences become reminders. */
export interface ReminderRule {
  readonly id: string;
  readonly task: string;
  /** ISO weekdays 1 to 7; all seven for daily. */
  readonly weekdays: readonly number[];
  /** Wall-clock time in the kitchen's zone. */
  readonly time: ClockTime;
  readonly audience: ReminderAudience;
  readonly madeBy: string;
}

/** A composed message on its way out; `id` travels in the message's metadata so that it can be found again. */
export interface OutboxMessage {
  readonly id: string;
  readonly workspace: string;
  /** What it tells of; absent for the list of what was missed. */
  readonly reminder?: Reminder;
  readonly audience: ReminderAudience;
  /** Where staff chose that it goes, in the surface's own words; absent: where the surface was set up to send it. */
  readonly place?: string;
  /** An Answer as JSON; the store does not look inside. */
  readonly body: string;
  readonly attempts: number;
  /** True when an earlier attempt ended without an answer: it may have been delivered. */
  readonly maybeSent: boolean;
}
