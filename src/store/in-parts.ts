/** SQLite takes at most 32,766 values in one statement; a list is asked for in parts. */
const IDS_AT_ONCE = 5_000;

/** Asks for a list of ids part by part. */
export async function inParts<T>(
  ids: readonly string[],
  query: (part: readonly string[]) => Promise<readonly T[]>,
): Promise<T[]> {
  const found: T[] = [];
  for (let start = 0; start < ids.length; start += IDS_AT_ONCE) {
    found.push(...(await query(ids.slice(start, start + IDS_AT_ONCE))));
  }
  return found;
}
