import { sayGame } from '../../../kitchen/games/say-game.ts';
import { type CalendarDate, sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { dayMeant } from '../../games/when.ts';

/**
 * The same batch with the day it is for, and the games planned on that day. An answer for no day comes back as it is; a
 * day that cannot be meant is said, and the batch still holds.
 */
export async function withDay(answer: Answer, asked: Asked): Promise<Answer> {
  try {
    const day = dayMeant(asked, asked.slots.when);
    return day ? await ofDay(answer, asked, day.date) : answer;
  } catch (error) {
    if (!(error instanceof Problem) || error.code !== 'bad_quantity') throw error;
    const text = `${error.message} The amounts hold for any day.`;
    return { ...answer, sections: [{ kind: 'text', text }, ...answer.sections] };
  }
}

async function ofDay(answer: Answer, asked: Asked, date: CalendarDate): Promise<Answer> {
  const { workspace } = asked.request.asker;
  const known = await asked.kitchen.games(workspace).between(date, date);
  const games = known.filter(({ status }) => status === 'planned');
  return {
    ...answer,
    sections: [{ kind: 'text', text: dayLine(date, games.map(sayGame)) }, ...answer.sections],
    data: { ...answer.data, day: date, games: games.map(({ id }) => id) },
  };
}

function dayLine(date: CalendarDate, games: readonly string[]): string {
  const day = `For ${sayDate(date)}`;
  return games.length > 0 ? `${day}. Game: ${games.join('; ')}.` : `${day}. No game is known on that day.`;
}
