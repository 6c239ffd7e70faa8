/** A roster of a department is some hundred people; beyond this it is another file. */
export const MOST_BYTES = 2 * 1024 * 1024;
export const MOST_ROWS = 20_000;
