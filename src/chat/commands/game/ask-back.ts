import type { Game } from '../../../kitchen/games/game.ts';
import { sayGame } from '../../../kitchen/games/say-game.ts';
import { type CalendarDate, type ClockTime, sayDate, sayTime } from '../../../kitchen/time/zone.ts';
import type { Answer, NextStep } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { restOfRequest, timeWords } from './told.ts';

/** One short question; each choice is a whole request, so that a tap or a copy answers it. */
function question(title: string, next: readonly NextStep[], asks: string): Answered {
  const answer: Answer = {
    title,
    sections:
      next.length > 0 ? [{ kind: 'list', heading: 'Say', items: next.map(({ says }) => `"${says}"`) }] : [],
    cautions: [],
    next,
    audience: 'channel',
    data: { asks },
  };
  return { answer };
}

/** "friday" on a Friday. */
export function askWhichDay(
  asked: Asked,
  dates: readonly CalendarDate[],
  time: ClockTime | undefined,
): Answered {
  // Without am or pm the hour goes on as it was said, to be asked about next.
  const isUnsure = asked.slots.time_unsure === true;
  const clock =
    time === undefined ? '' : ` ${isUnsure ? timeWords(time).replace(/[ap]m$/, '') : timeWords(time)}`;
  const next = dates.map((date, i) => ({
    label: `${i === 0 ? 'Today' : 'Next week'}, ${sayDate(date)}`,
    says: `game ${date}${clock}${restOfRequest(asked)}`,
  }));
  return question(`Which one: today, ${sayDate(dates[0] as CalendarDate)}, or a week later?`, next, 'when');
}

/** "6" with no am or pm. */
export function askWhichHalf(
  asked: Asked,
  date: CalendarDate,
  times: readonly ClockTime[],
  start: string,
): Answered {
  const next = times.map((time) => ({
    label: sayTime(time),
    says: `${start} ${date} ${timeWords(time)}${restOfRequest(asked)}`,
  }));
  return question(
    `Morning or evening: ${times.map(sayTime).join(' or ')} on ${sayDate(date)}?`,
    next,
    'time',
  );
}

/** Several games fit. */
export function askWhichGame(games: readonly Game[], says: (game: Game) => string): Answered {
  const next = games.slice(0, 5).map((game) => ({ label: sayGame(game), says: says(game) }));
  return question(`Which game? ${games.length} fit.`, next, 'game');
}

export function askDay(title: string, example: string): Answered {
  return question(title, [{ label: example, says: example }], 'when');
}
