/** Whether `work` ends within `mostMs`; it is not stopped when it does not. */
export async function within(mostMs: number, work: Promise<unknown>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), mostMs);
  });
  return Promise.race([work.then(() => true), late]).finally(() => clearTimeout(timer));
}
