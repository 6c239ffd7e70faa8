import type { ToldGame } from './reading.ts';

/** Whether `a` replaces `b`, two versions of one game: higher SEQUENCE, then later DTSTAMP (RFC 5546 §2.1.5). */
export function compareVersions(
  a: Pick<ToldGame, 'sequence' | 'stampMs'>,
  b: Pick<ToldGame, 'sequence' | 'stampMs'>,
): number {
  return a.sequence - b.sequence || (a.stampMs ?? 0) - (b.stampMs ?? 0);
}

/** All that the calendar says of a game but its version, as one text to compare. */
export function wordOf(game: ToldGame): string {
  const { title, sport, opponent, side, place, date, time, timeZone, status } = game;
  return JSON.stringify([title, sport, opponent, side, place, date, time, timeZone, status]);
}

export const keyOf = (game: Pick<ToldGame, 'uid' | 'recurrenceId'>): string =>
  `${game.uid}\n${game.recurrenceId ?? ''}`;

/**
 * The last version of every game, whatever order and how often they came. Equal versions that differ are decided by
 * what they say, so that the order never matters. Some programs give every event the same UID: games of one version
 * with different titles are then different games.
 */
export function latestVersions(told: readonly ToldGame[]): ToldGame[] {
  const groups = new Map<string, ToldGame[]>();
  for (const game of told) {
    const group = groups.get(keyOf(game));
    if (group) group.push(game);
    else groups.set(keyOf(game), [game]);
  }
  return [...groups.values()].flatMap((group) => (group.length === 1 ? group : settled(group)));
}

function settled(group: readonly ToldGame[]): ToldGame[] {
  const ordered = [...group].sort((a, b) => compareVersions(b, a) || (wordOf(a) < wordOf(b) ? -1 : 1));
  const [top] = ordered;
  if (!top) return [];
  const tied = ordered.filter((game) => compareVersions(game, top) === 0);
  const titles = new Map<string, ToldGame>();
  for (const game of tied) if (!titles.has(titleKey(game))) titles.set(titleKey(game), game);
  if (titles.size === 1) return [top];
  return [...titles].map(([key, game]) => ({ ...game, uid: `${game.uid}#${key}` }));
}

/** Same opponent, same game: a version that is cancelled or has another note in its title is no other game. */
const titleKey = (game: ToldGame): string => (game.opponent ?? game.title).toLowerCase();
