/** Leaves out what is null, so that absent means absent on the other side. */
export function present<K extends string, T>(key: K, value: T | null): { [P in K]?: T } {
  return (value === null ? {} : { [key]: value }) as { [P in K]?: T };
}
