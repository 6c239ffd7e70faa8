/** Whether `work` ends within `mostMs`; it is not stopped when it does not. */
export async function within(mostMs: number, work: Promise<unknown>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), mostMs);
  });
  return Promise.race([work.then(() => true), late]).finally(() => clearTimeout(timer));
}

/** What `work` gives, if it does so within `mostMs`; else throws, and the work goes on unheard. */
export async function inTime<T>(work: Promise<T>, mostMs: number): Promise<T> {
  let given: { readonly value: T } | undefined;
  const got = work.then((value) => {
    given = { value };
  });
  await within(mostMs, got);
  if (!given) throw new Error('it took too long');
  return given.value;
}
