import type { ChangedGame } from './merge-games.ts';
import { gameName, sayGame, sayWhen } from './say-game.ts';

/** "vs Riverton moved: Sun Dec 6, 2:00 pm CST, was Sat Dec 5, 2:00 pm CST". */
export function changeWords({ kind, game, before }: ChangedGame): string {
  const name = game.sport === undefined ? gameName(game) : `${game.sport} ${gameName(game)}`;
  if (kind === 'cancelled' || game.status === 'cancelled')
    return `${name} cancelled: ${sayWhen(game)}; its prep and reminders fall away`;
  if (kind === 'restored') return `${name} is on again: ${sayWhen(game)}`;
  if (kind === 'moved' && before)
    return `${name} moved: ${sayWhen(game)}, was ${sayWhen(before)}; its prep and reminders move with it`;
  return `${name} changed: ${sayGame(game)}`;
}
