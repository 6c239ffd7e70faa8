/** What is read of one calendar; more is no calendar of games. */
export const MOST_BYTES = 5 * 1024 * 1024;
export const MOST_EVENTS = 20_000;

/** Dates a rule is expanded over: this far back and ahead of now, and so many at the most. */
export const DAYS_BACK = 30;
export const DAYS_AHEAD = 400;
export const MOST_OF_ONE_RULE = 400;
/** Steps a rule may take to get there; one that began in 1990 and repeats daily takes 13,000. */
export const MOST_STEPS = 20_000;
/** Steps all rules of one file may take together. */
export const MOST_STEPS_A_FILE = 200_000;

/** More problems than this say nothing new; the rest are counted. */
export const MOST_PROBLEMS = 50;
