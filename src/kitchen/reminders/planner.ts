import type { Book } from '../../nutrition/book.ts';
import type { Game, GameBook } from '../games/game.ts';
import { type PrepPlan, prepPlans } from '../games/prep-plan.ts';
import type { Holding, Ledger } from '../stock/ledger.ts';
import { addDays, dateOf, instantOf } from '../time/zone.ts';
import { dailyReminders } from './planner/daily.ts';
import { stockReminders } from './planner/dates.ts';
import { gameReminders } from './planner/games.ts';
import { HORIZON_DAYS } from './planner/horizon.ts';
import { ruleReminders } from './planner/rules.ts';
import { tiedReminders } from './planner/tied.ts';
import type { Reminder, ReminderRule } from './reminder.ts';
import type { NewReminder, ReminderBook, Replanned } from './reminder-book.ts';

/** All that reminders depend on, at one instant. */
export interface KitchenState {
  readonly book: Book;
  readonly nowMs: number;
  readonly holdings: readonly Holding[];
  /** Of the days to come. */
  readonly games: readonly Game[];
  readonly rules: readonly ReminderRule[];
  /** Reminders told, not done, still of help. */
  readonly open: readonly Reminder[];
  /** People's own reminders that hang on a game, and those games, however far ahead. */
  readonly tied: readonly Reminder[];
  readonly tiedGames: readonly Game[];
}

/** The books of one workspace that the planner reads. */
export interface PlanningBooks {
  readonly ledger: Ledger;
  readonly games: GameBook;
  readonly reminders: ReminderBook;
}

/** What to make for the games to come, as things stand. */
export function plansFor({ games, holdings, book, nowMs }: KitchenState): readonly PrepPlan[] {
  return prepPlans({ games, holdings, book, nowMs });
}

/** Every reminder of the next days that the kitchen's settings, stock, games and rules ask for. */
export function plannedReminders(state: KitchenState): readonly NewReminder[] {
  const { book, nowMs, holdings, games, rules, open, tied, tiedGames } = state;
  const { settings } = book;
  return [
    ...dailyReminders(settings, nowMs),
    ...stockReminders(holdings, settings, nowMs),
    ...gameReminders({ games, plans: plansFor(state), open, settings, nowMs }),
    ...ruleReminders(rules, nowMs, settings.timeZone),
    ...tiedReminders({ tied, games: tiedGames, zone: settings.timeZone, nowMs }),
  ];
}

/** Reads what reminders depend on. */
export async function kitchenState(books: PlanningBooks, book: Book, nowMs: number): Promise<KitchenState> {
  const today = dateOf(nowMs, book.settings.timeZone);
  // One after the other: SQLite has one connection, and PostgreSQL's pool is for people.
  const holdings = await books.ledger.holdings();
  const games = await books.games.between(addDays(today, -1), addDays(today, HORIZON_DAYS));
  const rules = await books.reminders.rules();
  const open = await books.reminders.open(nowMs);
  const tied = await books.reminders.tied(nowMs);
  const tiedGames = await gamesOf(tied, games, books.games);
  return { book, nowMs, holdings, games, rules, open, tied, tiedGames };
}

async function gamesOf(
  tied: readonly Reminder[],
  known: readonly Game[],
  book: GameBook,
): Promise<readonly Game[]> {
  const found: Game[] = [];
  for (const id of new Set(tied.map(({ about }) => String(about.gameId)))) {
    const game = known.find((each) => each.id === id) ?? (await book.get(id));
    if (game) found.push(game);
  }
  return found;
}

/** Plans again: cheap enough for every minute, and the same state plans the same. */
export async function replanReminders(books: PlanningBooks, book: Book, nowMs: number): Promise<Replanned> {
  return books.reminders.plan(plannedReminders(await kitchenState(books, book, nowMs)), nowMs);
}

/** After the kitchen's zone changed: what people set by the wall clock keeps its wall time. */
export async function moveToZone(reminders: ReminderBook, zone: string): Promise<number> {
  const off = await reminders.offZone(zone);
  for (const { id, wall, dueMs, helpsUntilMs, planned } of off) {
    if (!wall) continue;
    const moved = { ...wall, zone };
    const newDueMs = instantOf(moved, zone);
    await reminders.move(
      id,
      { dueMs: newDueMs, helpsUntilMs: helpsUntilMs + newDueMs - dueMs, wall: moved },
      planned ? 'planner' : 'person',
    );
  }
  return off.length;
}
