import type { Allergen, AllergenMark, Need } from '../../nutrition/allergens.ts';
import type { Verdict } from '../../nutrition/conflict.ts';
import type { ScheduleEntry, ScheduleView } from '../games/schedule-entry.ts';
import type { PantryEntry, PantryView } from '../pantry/pantry.ts';
import type { CalendarDate } from '../time/zone.ts';
import type { Hold, LabelNews } from './holds.ts';

export type EventKind =
  | 'made'
  | 'served'
  | 'tossed'
  | 'counted'
  | 'corrected'
  | 'moved'
  | 'opened'
  | 'temperature'
  | 'received'
  | 'priced'
  | 'label'
  | 'listed'
  | 'game'
  | 'calendar'
  | 'released'
  | 'undone';

/** Where pieces are, as the food code sees it: `out` is time as the only control. */
export type HoldingState = 'fridge' | 'freezer' | 'room' | 'out';

/** One thing that happened; never changed, only reversed by another. */
export interface LedgerEvent {
  readonly id: string;
  readonly kind: EventKind;
  readonly who: string;
  /** When it happened, which may be before it was told. Epoch milliseconds. */
  readonly atMs: number;
  readonly recordedMs: number;
  readonly requestKey?: string;
  readonly reverses?: string;
  readonly note?: string;
}

/** A batch as it was when made: what is in it never follows later changes of the recipe. */
export interface BatchFacts {
  readonly ingredients: readonly { readonly foodId: string; readonly name: string; readonly massG: number }[];
  /** By the kitchen's list (US or EU), species named where the law wants it. */
  readonly contains: readonly AllergenMark[];
  readonly advisory: readonly AllergenMark[];
  /** Allergens nobody can rule out until a label is read. */
  readonly notKnown: readonly Allergen[];
  /** How each need stood to the whole recipe, by the labels and kinds known when it was made. */
  readonly verdicts: Readonly<Record<Need, Verdict>>;
  /** Days of the date mark in force for this recipe and kitchen. */
  readonly days: number;
  /** Whether time and temperature control it; false only for what is kept at room temperature. */
  readonly keepCold: boolean;
  /** Present when staff let products pass that the dietitian had not approved; who, is the event's. */
  readonly override?: BatchOverride;
}

export interface BatchOverride {
  /** Names of the products as they were then. */
  readonly products: readonly string[];
  readonly reason: string;
}

export interface Batch {
  readonly id: string;
  /** Short code people say: B17. */
  readonly code: string;
  readonly eventId: string;
  readonly recipeId: string;
  readonly recipeTitle: string;
  readonly recipeVersion: string;
  readonly variant?: string;
  readonly pieceUnit: string;
  readonly pieces: number;
  readonly madeMs: number;
  readonly madeDate: CalendarDate;
  readonly setUntilMs?: number;
  readonly facts: BatchFacts;
  readonly lots: readonly { readonly foodId: string; readonly lot: string }[];
}

/** Pieces of one batch with one history; `pieces` is the balance now. */
export interface Holding {
  readonly id: string;
  readonly batch: Batch;
  readonly eventId: string;
  readonly location: string;
  readonly state: HoldingState;
  readonly sinceMs: number;
  readonly sinceDate: CalendarDate;
  /** While frozen: days of the date mark left for after thawing. */
  readonly daysLeft?: number;
  readonly useBy?: CalendarDate;
  readonly discardAtMs?: number;
  readonly thawed: boolean;
  readonly pieces: number;
  /** What was told of its labels since it was made. */
  readonly labelNews?: readonly LabelNews[];
  /** Why it is not served for now; absent when nothing holds it. */
  readonly holds?: readonly Hold[];
}

export interface Movement {
  readonly holdingId: string;
  /** Signed: pieces that came or went. */
  readonly pieces: number;
}

export interface Reading {
  readonly location: string;
  readonly atMs: number;
  readonly tempF: number;
  readonly action?: string;
}

export interface LoggedReading extends Reading {
  readonly eventId: string;
  readonly who: string;
}

export interface Opening {
  readonly foodId: string;
  readonly lot?: string;
  readonly openedDate: CalendarDate;
  readonly useBy?: CalendarDate;
}

/** A holding on its way into the ledger; its balance comes from movements. */
export type NewHolding = Omit<Holding, 'pieces' | 'batch' | 'labelNews' | 'holds'> & {
  readonly batchId: string;
};

/** All that one event brings; recorded whole or not at all. */
export interface Entry extends PantryEntry {
  readonly event: LedgerEvent;
  readonly batches?: readonly Batch[];
  readonly holdings?: readonly NewHolding[];
  readonly movements?: readonly Movement[];
  readonly readings?: readonly Reading[];
  readonly openings?: readonly Opening[];
  readonly schedule?: ScheduleEntry;
}

/** What can be asked of the ledger, in or out of a transaction. Events that were reversed do not show. */
export interface LedgerView extends PantryView, ScheduleView {
  /** Everything with a balance above zero, earliest use-by first. */
  holdings(): Promise<readonly Holding[]>;
  batches(filter: BatchFilter): Promise<readonly Batch[]>;
  batchesById(ids: readonly string[]): Promise<readonly Batch[]>;
  event(id: string): Promise<LedgerEvent | undefined>;
  eventByRequest(requestKey: string): Promise<LedgerEvent | undefined>;
  /** The last event of this person that stands: not an undo, not undone. */
  lastEventBy(who: string): Promise<LedgerEvent | undefined>;
  events(fromMs: number, toMs: number): Promise<readonly LedgerEvent[]>;
  movementsOf(
    eventIds: readonly string[],
  ): Promise<readonly (Movement & { eventId: string; batchId: string })[]>;
  /** Movements of a batch with their events, oldest first. */
  historyOf(batchId: string): Promise<readonly { event: LedgerEvent; pieces: number }[]>;
  readings(filter: { location?: string; fromMs: number; toMs: number }): Promise<readonly LoggedReading[]>;
  /** When each place was first read, epoch milliseconds; a place nobody ever read is absent. */
  firstReadings(): Promise<ReadonlyMap<string, number>>;
  /** Packages of these foods that are open, latest opening of each food and lot, with when it was opened. */
  openings(foodIds: readonly string[]): Promise<readonly (Opening & { readonly atMs: number })[]>;
}

export interface BatchFilter {
  readonly codes?: readonly string[];
  /** Made by these entries. */
  readonly eventIds?: readonly string[];
  readonly recipeId?: string;
  readonly madeDate?: CalendarDate;
  readonly madeFrom?: CalendarDate;
  readonly lot?: string;
}

export interface LedgerWriter extends LedgerView {
  nextBatchCode(): Promise<string>;
  newId(): string;
  append(entry: Entry): Promise<void>;
}

/** The ledger of one workspace. `write` runs alone: no other writer of this workspace comes between. */
export interface Ledger extends LedgerView {
  write<T>(work: (ledger: LedgerWriter) => Promise<T>): Promise<T>;
}

/** Opens the ledger of a workspace. */
export type Ledgers = (workspace: string) => Ledger;
