import type { Game } from './game.ts';

/** Whether two versions of a game say the same to people: when it is, against whom, who comes and what is made. */
export const isSameGame = (a: Game | undefined, b: Game | undefined): boolean => wordsOf(a) === wordsOf(b);

const wordsOf = (game: Game | undefined): string =>
  game === undefined
    ? ''
    : JSON.stringify([
        game.calendarId,
        game.title,
        game.sport,
        game.opponent,
        game.side,
        game.place,
        game.date,
        game.time,
        game.timeZone,
        game.departsMs,
        game.people,
        game.recipeId,
        game.status,
      ]);
