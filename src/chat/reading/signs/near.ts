/**
 * Two things said within some words of each other, whichever comes first.
 * @example near('throat', 'tight\\w*').test(' tight feeling in my throat ') // true
 */
export function near(one: string, other: string, most = 4): RegExp {
  const between = `(?:[a-z0-9-]+ ){0,${most}}`;
  return new RegExp(` (?:${one}) ${between}(?:${other}) | (?:${other}) ${between}(?:${one}) `);
}

/** One thing said anywhere in a message that also says another. */
export const both = (one: string, other: string): RegExp => new RegExp(`^(?=.* (?:${one}) ).* (?:${other}) `);
