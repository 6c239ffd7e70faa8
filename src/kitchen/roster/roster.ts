import type { Need } from '../../nutrition/allergens.ts';

/** Who last said what a person needs. */
export type ToldBy = 'file' | 'self' | 'staff';

/** What one person eats and avoids. Personal: shown to staff and to the person alone, never logged. */
export interface PersonNeeds {
  /** The kitchen's code, such as WP-07, or the workspace's user id; never a name. */
  readonly code: string;
  /** The workspace's user id of the person a code stands for, when staff have said so. */
  readonly member?: string;
  /** The team the person plays for, in the kitchen's words. */
  readonly team?: string;
  /** In the order of the shared list, each once. Coeliac disease is `gluten`: what is avoided, not the diagnosis. */
  readonly avoid: readonly Need[];
  /** Foods avoided beyond that list, in the words they were told in: "kiwi". */
  readonly foods: readonly string[];
  /** Ids of recipes the person likes. */
  readonly likes: readonly string[];
  /** Pieces the person gets; the kitchen's usual when absent. */
  readonly pieces?: number;
  readonly toldBy: ToldBy;
  readonly updatedMs: number;
}

/** The people of one workspace, by code. */
export interface Roster {
  /** Everybody, by code. */
  all(): Promise<readonly PersonNeeds[]>;
  /** The person with this code, or with this workspace user id. */
  get(who: string): Promise<PersonNeeds | undefined>;
  /** Writes people whole, by code; all or none. */
  put(people: readonly PersonNeeds[]): Promise<void>;
  /** Forgets a person; false when nobody has this code. */
  remove(code: string): Promise<boolean>;
}

export type Rosters = (workspace: string) => Roster;
