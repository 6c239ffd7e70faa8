/** What came back from an address. */
export type FetchedCalendar =
  | { readonly kind: 'unchanged' }
  | { readonly kind: 'read'; readonly bytes: Uint8Array; readonly etag?: string };

/**
 * Fetches a calendar, with the etag of last time when there is one.
 * @throws Problem that says what is wrong with the address or its answer.
 */
export type FetchCalendar = (url: string, etag?: string) => Promise<FetchedCalendar>;

/** How calendars get into the kitchen. A surface that strangers can write to has no `file`. */
export interface CalendarReach {
  readonly fetch?: FetchCalendar;
  /** Reads a file of this machine; throws a Problem when it cannot. */
  readonly file?: (path: string) => Promise<Uint8Array>;
}
