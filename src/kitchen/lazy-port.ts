type Method = (...given: readonly unknown[]) => Promise<unknown>;

/** A port whose methods all answer later: each call opens the real one first. `then` is none of them, so it can be awaited. */
export function lazyPort<Port extends object>(open: () => Promise<Port>): Port {
  return new Proxy({} as Port, {
    get(_, name) {
      if (typeof name === 'symbol' || name === 'then') return undefined;
      return async (...given: readonly unknown[]) => ((await open())[name as keyof Port] as Method)(...given);
    },
  });
}
