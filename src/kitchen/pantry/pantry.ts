import type { AllergenMark } from '../../nutrition/allergens.ts';

/** Grams that came or went of one food and lot. Kept to the milligram, so that sums are exact. */
export interface PantryMovement {
  readonly foodId: string;
  readonly lot?: string;
  /** Signed. */
  readonly massG: number;
  /** What was paid for what came, in cents; absent when nobody said. */
  readonly cents?: number;
}

/** What is on the shelf of one food and lot, above zero. */
export interface PantryHeld {
  readonly foodId: string;
  readonly lot?: string;
  readonly massG: number;
}

/** A price told in chat: it stands until the next one of this food. */
export interface StatedPrice {
  readonly foodId: string;
  readonly priceCents: number;
  readonly packageG: number;
  readonly packageName: string;
  /** When it was told. Epoch milliseconds. */
  readonly atMs: number;
}

/**
 * What was said of a label. `changed`: it differs, and nobody has read it through yet. `checked`: staff have read it,
 * and what was reported stands. `as_before`: staff have read it, and it says what the book says.
 */
export type LabelState = 'changed' | 'checked' | 'as_before';

export interface LabelNote {
  readonly foodId: string;
  readonly state: LabelState;
  /** What the label names beyond what the book knows. */
  readonly contains: readonly AllergenMark[];
  readonly advisory: readonly AllergenMark[];
}

export interface ToldLabel extends LabelNote {
  readonly eventId: string;
  readonly who: string;
  readonly atMs: number;
}

/** Something put on the shopping list by hand, or taken off it. */
export interface ListNote {
  /** What it is called on the list; the same name is the same item. */
  readonly name: string;
  readonly foodId?: string;
  /** How much more, or below zero how much less; absent when nobody said how much. */
  readonly massG?: number;
  /** False takes all of it off. */
  readonly wanted: boolean;
}

export interface ToldItem extends ListNote {
  readonly who: string;
  readonly atMs: number;
}

/** A movement with what happened and when. */
export interface PantryMoved extends PantryMovement {
  readonly eventId: string;
  readonly atMs: number;
}

/** Which movements are asked for; a lot is the same in capitals or not. */
export interface MovedFilter {
  readonly foodId?: string;
  readonly lot?: string;
  readonly afterMs?: number;
}

/** What one event brings to the pantry. */
export interface PantryEntry {
  readonly pantry?: readonly PantryMovement[];
  readonly prices?: readonly Omit<StatedPrice, 'atMs'>[];
  readonly labels?: readonly LabelNote[];
  readonly list?: readonly ListNote[];
}

/** What can be asked of the pantry. What was undone does not show. */
export interface PantryView {
  /** First received first. */
  pantry(): Promise<readonly PantryHeld[]>;
  pantryMovementsOf(eventIds: readonly string[]): Promise<readonly (PantryMovement & { eventId: string })[]>;
  /** Foods that were ever received or counted, whether any is left or not. */
  pantryFoods(): Promise<ReadonlySet<string>>;
  /** The price in force of each food that was told one. */
  prices(): Promise<readonly StatedPrice[]>;
  /** All that was told of labels, oldest first. */
  labelNotes(): Promise<readonly ToldLabel[]>;
  /** All that was told of the list, oldest first. */
  listNotes(): Promise<readonly ToldItem[]>;
  /** What came and went, oldest first. */
  pantryMoved(filter: MovedFilter): Promise<readonly PantryMoved[]>;
}
