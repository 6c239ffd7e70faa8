import type { Food } from './food.ts';
import type { Pan, Recipe } from './recipe.ts';

/** What a kitchen decided for itself; read from its folder. Clock times are HH:MM in `timeZone`. */
export interface KitchenSettings {
  readonly name: string;
  /** IANA zone, e.g. America/Chicago. */
  readonly timeZone: string;
  readonly allergenList: 'us' | 'eu';
  /** Athletes see calories only when this is true. */
  readonly caloriesForAthletes: boolean;
  readonly emergencyNumber: string;
  /** Who to name when a question is not the kitchen's: role to the words people use. */
  readonly contacts: {
    readonly dietitian: string;
    readonly physician: string;
    readonly athleticTrainer: string;
  };
  readonly pans: readonly Pan[];
  readonly locations: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: 'fridge' | 'freezer' | 'room';
    /** Slabs that find room to set in it at once; absent when nobody has said. */
    readonly pans?: number;
  }[];
  /** Fewer than or equal to the Food Code's 7, counting the day made. */
  readonly mostDays: number;
  readonly prepTime: string;
  readonly stockCheckTime: string;
  readonly readingTimes: readonly string[];
  /** Weekdays nobody preps, 1 Monday to 7 Sunday. */
  readonly closedWeekdays: readonly number[];
  /** Spare share of a plan, 0.1 is 10 %. */
  readonly spareShare: number;
  readonly piecesPerPerson: number;
  /** What games get when nobody says otherwise: a recipe id, people fed, minutes between packing and leaving. */
  readonly gameRecipe?: string;
  readonly gamePeople?: number;
  readonly packMin?: number;
  /** Pieces that should be on the shelf, by recipe id. */
  readonly par: ReadonlyMap<string, number>;
  /** What may be spent on food; absent when the kitchen has not said. */
  readonly budget?: KitchenBudget;
}

export interface KitchenBudget {
  /** Whole cents. */
  readonly cents: number;
  /** A week begins on Monday. */
  readonly per: 'week' | 'month';
}

/** One thing wrong in the kitchen's folder, told so that the writer can mend it. */
export interface BookProblem {
  readonly file: string;
  readonly line?: number;
  readonly field?: string;
  readonly message: string;
  readonly hint: string;
}

/** All that a kitchen cooks from. Immutable; a changed folder is a new book. */
export interface Book {
  readonly settings: KitchenSettings;
  readonly foods: ReadonlyMap<string, Food>;
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly problems: readonly BookProblem[];
}
