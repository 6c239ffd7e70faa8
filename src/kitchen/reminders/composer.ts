import type { Ledger } from '../stock/ledger.ts';
import type { KitchenState } from './planner.ts';
import type { Reminder, ReminderAudience } from './reminder.ts';

/** What a message is written from: the kitchen as it is now, not as it was when the reminder was planned. */
export interface ComposingDesk {
  readonly state: KitchenState;
  readonly ledger: Ledger;
  /** It comes well after its time. */
  readonly late: boolean;
}

/** Writes messages, as the JSON a messenger draws. */
export interface Composer {
  /** Undefined when there is nothing left to tell. */
  compose(reminder: Reminder, desk: ComposingDesk): Promise<string | undefined>;
  /** One message for all that was missed. */
  composeMissed(audience: ReminderAudience, missed: readonly Reminder[], state: KitchenState): string;
}
