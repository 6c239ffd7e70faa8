import { gameName } from '../../kitchen/games/say-game.ts';
import type { KitchenState } from '../../kitchen/reminders/planner.ts';
import type { Reminder, ReminderKind } from '../../kitchen/reminders/reminder.ts';

const KINDS: Record<Exclude<ReminderKind, 'own'>, string> = {
  prep: 'Prep',
  pack: 'Packing',
  stock_check: 'Stock check',
  expiring: 'Last day today',
  expired: 'Past the date',
  reading: 'Temperature reading',
  still_out: 'Still out of the fridge',
  week: 'Week in figures',
  calendar: 'Calendar news',
  escalation: 'Prep nobody has taken',
  missed: 'Missed reminders',
};

/** What a reminder is about, in a few words: "soak dates", "Prep for vs Riverton". */
export function reminderName(reminder: Reminder, state: Pick<KitchenState, 'games'>): string {
  if (reminder.kind === 'own') return String(reminder.about.task);
  const game = state.games.find(({ id }) => id === reminder.about.gameId);
  return `${KINDS[reminder.kind]}${game ? ` for ${gameName(game)}` : ''}`;
}
