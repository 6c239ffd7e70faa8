/** One line of the bench: what was measured, beside what, and the target as a ratio or a rate. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  readonly beside: string;
  readonly target: string;
  readonly met: boolean;
}

/** The middle of some timings. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Times `work` again and again for `forMs`, at most `most` times; milliseconds each. */
export async function timings(work: () => unknown, forMs: number, most: number): Promise<number[]> {
  const each: number[] = [];
  const end = performance.now() + forMs;
  while (each.length < most && performance.now() < end) {
    const start = performance.now();
    await work();
    each.push(performance.now() - start);
  }
  return each;
}
