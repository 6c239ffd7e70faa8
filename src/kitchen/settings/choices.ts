import { Problem } from '../../nutrition/problem.ts';
import { clockTime, isTimeZone } from '../time/zone.ts';

/** What staff decided for one workspace; each stands over the same setting of `kitchen.yaml`. */
export interface Choices {
  readonly timeZone?: string;
  readonly caloriesForAthletes?: boolean;
  readonly mostDays?: number;
  readonly prepTime?: string;
  readonly stockCheckTime?: string;
  readonly readingTimes?: readonly string[];
  /** Weekdays nobody preps, 1 Monday to 7 Sunday. */
  readonly closedWeekdays?: readonly number[];
  /** Pieces that should be on the shelf, by recipe id; replaces the whole list. */
  readonly par?: Readonly<Record<string, number>>;
  /** Where reminders go, in the surface's own ids. */
  readonly kitchenChannel?: string;
  readonly dietitianChannel?: string;
}

/** The choices of one workspace. */
export interface ChoiceBook {
  get(): Promise<Choices>;
  put(choices: Choices, who: string, nowMs: number): Promise<void>;
}

export type ChoiceBooks = (workspace: string) => ChoiceBook;

/** FDA Food Code (model) 3-501.17: ready-to-eat food held at 41 °F, day made included. */
const FOOD_CODE_DAYS = 7;
const MOST_PAR = 10_000;

/**
 * The same choices, once all of them can be lived by.
 * @throws Problem `bad_quantity` whose message names what is wrong.
 */
export function checkedChoices(choices: Choices): Choices {
  const { timeZone, mostDays, readingTimes = [], closedWeekdays = [], par = {} } = choices;
  if (timeZone !== undefined && !isTimeZone(timeZone)) {
    throw wrong(`"${timeZone.slice(0, 40)}" is not a time zone.`, 'Write one like America/Chicago.');
  }
  if (mostDays !== undefined && !isWhole(mostDays, 1, FOOD_CODE_DAYS)) {
    throw wrong(
      `${mostDays} is not a number of days for the date mark.`,
      'The Food Code allows 7 at the most, counting the day made; write 1 to 7.',
    );
  }
  for (const time of [choices.prepTime, choices.stockCheckTime, ...readingTimes]) {
    if (time !== undefined) clockTime(time);
  }
  if (!closedWeekdays.every((day) => isWhole(day, 1, 7)) || new Set(closedWeekdays).size > 6) {
    throw wrong('Those are not closed days.', 'Choose weekdays, and leave at least one open.');
  }
  for (const [recipe, pieces] of Object.entries(par)) {
    if (!isWhole(pieces, 0, MOST_PAR)) {
      throw wrong(`${pieces} is not a par for ${recipe}.`, 'Write whole numbers of pieces.');
    }
  }
  return choices;
}

const isWhole = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most;

const wrong = (message: string, hint: string): Problem => new Problem('bad_quantity', message, hint);
