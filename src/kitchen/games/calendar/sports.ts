/** Sports as feeds name them, the longer name before the shorter; the value is what the kitchen says. */
const SPORTS: readonly (readonly [RegExp, string])[] = [
  [/beach volleyball|sand volleyball/, 'beach volleyball'],
  [/water polo/, 'water polo'],
  [/cross country|cross-country|\bxc\b/, 'cross country'],
  [/track (?:and|&) field|track\/field|\btrack\b|\bt&f\b/, 'track'],
  [/swimming (?:and|&) diving|swim (?:and|&) dive|swimming|swim\b|diving/, 'swimming'],
  [/field hockey/, 'field hockey'],
  [/ice hockey|\bhockey\b/, 'hockey'],
  [/flag football/, 'flag football'],
  [/football/, 'football'],
  [/\bsoccer\b|\b[mw]soc\b/, 'soccer'],
  [/volleyball|\b[mw]?vb\b/, 'volleyball'],
  [/basketball|\b[mw]bb\b|\bhoops\b/, 'basketball'],
  [/baseball/, 'baseball'],
  [/softball/, 'softball'],
  [/\btennis\b|\b[mw]ten\b/, 'tennis'],
  [/\bgolf\b/, 'golf'],
  [/lacrosse|\b[mw]?lax\b/, 'lacrosse'],
  [/wrestling/, 'wrestling'],
  [/\browing\b|\bcrew\b/, 'rowing'],
  [/gymnastics/, 'gymnastics'],
  [/fencing/, 'fencing'],
  [/\brugby\b/, 'rugby'],
  [/cheer(?:leading)?\b/, 'cheer'],
  [/\besports\b/, 'esports'],
];

const WOMEN = /\bwomen'?s?\b|\bwomens\b|\bw(?:soc|bb|vb|ten|lax)\b|\bw\.\s/i;
const MEN = /\bmen'?s?\b|\bmens\b|\bm(?:soc|bb|vb|ten|lax)\b|\bm\.\s/i;

/**
 * The sport named in a text, with whose team when that is said.
 * @example sportIn("Women's Soccer vs Riverton") // "women's soccer"
 */
export function sportIn(text: string): string | undefined {
  const plain = text.replace(/[_+]|%20/g, ' ').toLowerCase();
  const sport = SPORTS.find(([pattern]) => pattern.test(plain))?.[1];
  if (sport === undefined) return undefined;
  if (WOMEN.test(plain)) return `women's ${sport}`;
  return MEN.test(plain) ? `men's ${sport}` : sport;
}

const LEADING =
  /^\W*((?:(?:wo)?men'?s?|[mw]\.)?\s*[a-z& /-]{2,30}?)\s*(?:\||:|\s[-–—]\s|(?=\s(?:vs?\.?|versus|at|against)\s)|(?=\s@\s))\s*(.*)$/i;

/** The sport that stands before the teams, and what is left of the title without it. */
export function sportLeading(title: string): { sport?: string; rest: string } {
  const match = LEADING.exec(title);
  const [, head = '', rest = ''] = match ?? [];
  const sport = head === '' ? undefined : sportIn(head);
  return sport === undefined ? { rest: title } : { sport, rest };
}
