import type { Generated } from 'kysely';

/** The tables as Kysely sees them. Instants are epoch milliseconds (`_ms`), dates are YYYY-MM-DD text (`_date`, `use_by`). */
export interface Schema {
  events: EventsTable;
  batches: BatchesTable;
  batch_lots: BatchLotsTable;
  holdings: HoldingsTable;
  movements: MovementsTable;
  balances: BalancesTable;
  readings: ReadingsTable;
  openings: OpeningsTable;
  games: GamesTable;
  calendars: CalendarsTable;
  schedule_changes: ScheduleChangesTable;
  reminders: RemindersTable;
  reminder_rules: ReminderRulesTable;
  outbox: OutboxTable;
  people: PeopleTable;
  kitchen_choices: KitchenChoicesTable;
  installations: InstallationsTable;
  claims: ClaimsTable;
  installs_begun: InstallsBegunTable;
  pantry_movements: PantryMovementsTable;
  pantry_balances: PantryBalancesTable;
  prices: PricesTable;
  label_notes: LabelNotesTable;
  list_notes: ListNotesTable;
}

/** What happened, one row an action, append-only. `reverses` names the event this one takes back. */
export interface EventsTable {
  workspace: string;
  id: string;
  kind: string;
  who: string;
  at_ms: number;
  recorded_ms: number;
  /** The request that caused it: the same request twice records once. */
  request_key: string | null;
  reverses: string | null;
  note: string | null;
}

/** What was made, frozen at that moment. */
export interface BatchesTable {
  workspace: string;
  id: string;
  /** Short code people can say: B17. */
  code: string;
  event_id: string;
  recipe_id: string;
  recipe_title: string;
  recipe_version: string;
  variant: string | null;
  piece_unit: string;
  pieces: number;
  made_ms: number;
  made_date: string;
  set_until_ms: number | null;
  /** JSON: ingredients and allergens as they were. */
  facts: string;
}

export interface BatchLotsTable {
  workspace: string;
  batch_id: string;
  food_id: string;
  lot: string;
}

/**
 * Pieces of one batch that share one history (place, days used, use-by). Never changed: a move makes a new holding,
 * and what is in each is the sum of its movements.
 */
export interface HoldingsTable {
  workspace: string;
  id: string;
  batch_id: string;
  event_id: string;
  location: string;
  /** fridge, freezer, room or out (time as control). */
  state: string;
  since_ms: number;
  since_date: string;
  /** While frozen: calendar days of the date mark that are left for after thawing. */
  days_left: number | null;
  /** Last day it may be served; null while frozen or when only a clock governs. */
  use_by: string | null;
  /** For what is out of temperature control: throw out at this instant. */
  discard_at_ms: number | null;
  thawed: number;
}

export interface MovementsTable {
  workspace: string;
  event_id: string;
  holding_id: string;
  /** Signed. */
  pieces: number;
}

/** The sum of a holding's movements, kept in step with them; never below zero. */
export interface BalancesTable {
  workspace: string;
  holding_id: string;
  pieces: number;
}

export interface ReadingsTable {
  workspace: string;
  event_id: string;
  location: string;
  at_ms: number;
  temp_f: number;
  /** What was done about it, in the reader's words. */
  action: string | null;
}

/** An ingredient package opened: its own date mark may come first. */
export interface OpeningsTable {
  workspace: string;
  event_id: string;
  food_id: string;
  lot: string | null;
  opened_date: string;
  use_by: string | null;
}

export interface GamesTable {
  workspace: string;
  id: string;
  calendar_id: string | null;
  uid: string;
  recurrence_id: string | null;
  sequence: number;
  stamp_ms: number | null;
  title: string;
  sport: string | null;
  opponent: string | null;
  side: string | null;
  place: string | null;
  local_date: string;
  local_time: string | null;
  time_zone: string;
  departs_ms: number | null;
  people: number | null;
  recipe_id: string | null;
  status: string;
  updated_ms: number;
  /** JSON: what it was before its last change. */
  was: string | null;
  calendar_says: string | null;
  missing_ms: number | null;
}

export interface CalendarsTable {
  workspace: string;
  id: string;
  name: string;
  url: string | null;
  etag: string | null;
  read_ms: number | null;
  next_read_ms: number | null;
  problem: string | null;
  /** How often it was read, well or not. */
  reads: Generated<number>;
}

/** A game or calendar before and after an event, as JSON; null where it was not there. */
export interface ScheduleChangesTable {
  workspace: string;
  event_id: string;
  /** game, calendar */
  kind: string;
  item_id: string;
  before: string | null;
  after: string | null;
}

/** One occurrence to be told; `key` is its name, so planning again adds nothing. */
export interface RemindersTable {
  workspace: string;
  id: string;
  key: string;
  kind: string;
  audience: string;
  due_ms: number;
  helps_until_ms: number;
  about: string;
  state: string;
  claimed_by: string | null;
  claimed_until_ms: number | null;
  attempts: Generated<number>;
  taken_by: string | null;
  done_by: string | null;
  done_ms: number | null;
  /** What people say: R12. Counted in each workspace. */
  number: number;
  /** 1 while the planner keeps it; 0 when a person made or changed it. */
  planned: number;
  /** YYYY-MM-DDTHH:MM in `zone` when the due instant hangs on the kitchen's wall clock. */
  wall: string | null;
  zone: string | null;
  sent_ms: number | null;
  /** The game it moves with. */
  game_id: string | null;
}

export interface ReminderRulesTable {
  workspace: string;
  id: string;
  task: string;
  weekdays: string;
  time: string;
  audience: string;
  made_by: string;
}

/** Messages on their way out; a row leaves `sending` only by who holds it, or when its lease has run out. */
export interface OutboxTable {
  workspace: string;
  id: string;
  reminder_id: string | null;
  audience: string;
  body: string;
  state: string;
  next_attempt_ms: number;
  attempts: Generated<number>;
  sending_by: string | null;
  sending_until_ms: number | null;
  sent_ms: number | null;
  sent_ref: string | null;
  problem: string | null;
  /** 1 when an attempt ended without an answer. */
  maybe_sent: Generated<number>;
}

/** What a person eats and avoids; `avoid`, `foods` and `likes` are JSON lists. */
export interface PeopleTable {
  workspace: string;
  code: string;
  member: string | null;
  team: string | null;
  avoid: string;
  foods: string;
  likes: string;
  pieces: number | null;
  told_by: string;
  updated_ms: number;
}

/** `choices` is a JSON object; a setting that is not in it is the kitchen's own. */
export interface KitchenChoicesTable {
  workspace: string;
  choices: string;
  told_by: string;
  updated_ms: number;
}

/** `credentials` is encrypted with the key that `key_name` names. */
export interface InstallationsTable {
  workspace: string;
  installed_by: string | null;
  installed_ms: number;
  credentials: string;
  key_name: string;
}

/** Keys are kept as hashes: some hold a person's words. */
export interface ClaimsTable {
  workspace: string;
  key_hash: string;
  until_ms: number;
}

export interface InstallsBegunTable {
  state_hash: string;
  options: string;
  until_ms: number;
}

/** What came and went of a food and lot, milligrams; `lot` is empty when nobody told it. */
export interface PantryMovementsTable {
  workspace: string;
  event_id: string;
  food_id: string;
  lot: string;
  /** Signed. */
  mass_mg: number;
  /** What was paid for what came. */
  cents: number | null;
}

/** The sum of the movements of a food and lot, kept in step with them; never below zero. */
export interface PantryBalancesTable {
  workspace: string;
  food_id: string;
  lot: string;
  mass_mg: number;
  /** The event that first brought it: what came first is used first. */
  first_event_id: string;
}

/** Prices told in chat, a row a telling. */
export interface PricesTable {
  workspace: string;
  event_id: string;
  food_id: string;
  cents: number;
  package_mg: number;
  package_name: string;
}

/** What was told of labels; `contains` and `advisory` are JSON lists of allergen marks. */
export interface LabelNotesTable {
  workspace: string;
  event_id: string;
  food_id: string;
  /** changed, checked or as_before. */
  state: string;
  contains: string;
  advisory: string;
}

/** What was put on the shopping list by hand (`wanted` 1) or taken off it (0). */
export interface ListNotesTable {
  workspace: string;
  event_id: string;
  name: string;
  food_id: string | null;
  mass_mg: number | null;
  wanted: number;
}
