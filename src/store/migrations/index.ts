import type { Migration } from 'kysely';
import { ledger } from './0001-ledger.ts';
import { games } from './0002-games.ts';
import { reminders } from './0003-reminders.ts';
import { balances } from './0004-balances.ts';
import { gameChanges } from './0005-game-changes.ts';
import { reminderCodes } from './0006-reminder-codes.ts';
import { workspaces } from './0007-workspaces.ts';
import { roster } from './0009-roster.ts';
import { kitchenChoices } from './0010-kitchen-choices.ts';
import { pantry } from './0013-pantry.ts';
import { scheduleChanges } from './0014-schedule-changes.ts';

/** In the order they run; names sort the same way. Never edit one that has landed: add the next. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-ledger': ledger,
  '0002-games': games,
  '0003-reminders': reminders,
  '0004-balances': balances,
  '0005-game-changes': gameChanges,
  '0006-reminder-codes': reminderCodes,
  '0007-workspaces': workspaces,
  '0009-roster': roster,
  '0010-kitchen-choices': kitchenChoices,
  '0013-pantry': pantry,
  '0014-schedule-changes': scheduleChanges,
};
