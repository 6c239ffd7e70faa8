import type { Game } from '../../games/game.ts';
import { dueBefore, leadOf } from '../game-lead.ts';
import type { Reminder } from '../reminder.ts';
import type { NewReminder } from '../reminder-book.ts';

export interface TiedState {
  /** People's own reminders before a game, told or not, that nobody took out of the planner's hands. */
  readonly tied: readonly Reminder[];
  readonly games: readonly Game[];
  readonly zone: string;
  readonly nowMs: number;
}

/**
 * People's own reminders before a game, as the games stand now: moved with the game, absent while it is off, and told
 * once more when a game moves to later after it was told.
 */
export function tiedReminders({ tied, games, zone, nowMs }: TiedState): readonly NewReminder[] {
  const byId = new Map(games.map((game) => [game.id, game]));
  return [...lastOfEach(tied).values()].flatMap((reminder) => {
    const lead = leadOf(reminder.about);
    const due = lead && dueBefore(byId.get(lead.gameId), lead, zone);
    if (!due) return [];
    const { key, kind, audience, about } = reminder;
    const same = { kind, audience, about, planned: true, ...due } as const;
    if (isWaiting(reminder)) return [{ ...same, key }];
    if (reminder.doneMs !== undefined || due.dueMs <= nowMs || due.dueMs === reminder.dueMs) return [];
    const first = firstKey(reminder);
    return [{ ...same, key: `${first}@${due.dueMs}`, about: { ...about, first } }];
  });
}

const isWaiting = ({ state }: Reminder): boolean =>
  state === 'pending' || state === 'cancelled' || state === 'claimed';

/** A reminder told again after its game moved is a new one; all of them go by the key of the first. */
const firstKey = ({ key, about }: Reminder): string => (typeof about.first === 'string' ? about.first : key);

function lastOfEach(tied: readonly Reminder[]): ReadonlyMap<string, Reminder> {
  const last = new Map<string, Reminder>();
  for (const reminder of [...tied].sort((a, b) => number(a) - number(b)))
    last.set(firstKey(reminder), reminder);
  return last;
}

/** Later ones have higher codes. */
const number = ({ code }: Reminder): number => Number(code.slice(1));
