import type { Game, Side } from '../../../kitchen/games/game.ts';
import type { ToldInChat } from '../../../kitchen/games/tell-game.ts';
import { type CalendarDate, type ClockTime, sayInstant, sayTime } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Asked } from '../../command.ts';
import { departureMeant, timeIn } from '../../games/when.ts';
import { recipeMeant } from '../../which-recipe.ts';

const MOST_PEOPLE = 2_000;

/** What a request says of a game besides its day and time, and what had to be assumed. */
export interface Details {
  readonly told: ToldInChat;
  readonly assumed: readonly string[];
}

/** Opponent, side, sport, people, snack and departure, as far as they were said. */
export async function detailsOf(
  asked: Asked,
  start: { readonly date: CalendarDate; readonly time?: ClockTime },
): Promise<Details> {
  const { slots } = asked;
  const assumed: string[] = [];
  const recipe = slots.recipe === undefined ? undefined : await recipeMeant(asked);
  const departs = departure(asked, start, assumed);
  return {
    told: {
      ...(typeof slots.opponent === 'string' ? { opponent: asWritten(asked, slots.opponent) } : {}),
      ...(typeof slots.sport === 'string' ? { sport: slots.sport } : {}),
      ...(isSide(slots.home_away) ? { side: slots.home_away } : {}),
      ...(slots.people === undefined ? {} : { people: peopleOf(slots.people) }),
      ...(recipe ? { recipeId: recipe.id } : {}),
      ...(departs === undefined ? {} : { departsMs: departs }),
    },
    assumed,
  };
}

const isSide = (value: unknown): value is Side => value === 'home' || value === 'away' || value === 'neutral';

/** The reader gives names in lower case: as they were typed, else with capitals. */
function asWritten({ request }: Asked, opponent: string): string {
  const at = request.text.toLowerCase().indexOf(opponent.toLowerCase());
  const typed = at < 0 ? opponent : request.text.slice(at, at + opponent.length);
  return typed === typed.toLowerCase()
    ? typed.replace(/(?<=^|[\s-])\p{L}/gu, (letter) => letter.toUpperCase())
    : typed;
}

function peopleOf(value: unknown): number {
  if (typeof value === 'number' && Number.isInteger(value) && value > 0 && value <= MOST_PEOPLE) return value;
  throw new Problem(
    'bad_quantity',
    `${String(value)} is not a number of people.`,
    'Write a whole number, like "44 people".',
  );
}

function departure(
  asked: Asked,
  start: { readonly date: CalendarDate; readonly time?: ClockTime },
  assumed: string[],
): number | undefined {
  const said = timeIn(asked.slots.departs);
  if (said === undefined) return undefined;
  const zone = asked.kitchen.book.settings.timeZone;
  const meant = departureMeant(said, asked.slots.departs_unsure === true, start, zone);
  if (meant.assumed) {
    assumed.push(`I took the departure as ${sayInstant(meant.ms, zone)}; say am or pm if it is not.`);
  }
  return meant.ms;
}

/** "2:00 pm" of a request for the next step's words. */
export const timeWords = (time: ClockTime): string => sayTime(time).replace(':00', '').replace(' ', '');

/** "vs riverton", as it was said, for the words of a next step. */
export function restOfRequest({ slots }: Asked): string {
  const { opponent, home_away: side } = slots;
  const name = typeof opponent === 'string' ? ` ${side === 'away' ? 'at' : 'vs'} ${opponent}` : '';
  const alone = name === '' && typeof side === 'string' ? ` ${side}` : '';
  const people = typeof slots.people === 'number' ? ` ${slots.people} people` : '';
  const departs =
    typeof slots.departs === 'string' && slots.departs_unsure !== true
      ? ` leaves ${timeWords(slots.departs as ClockTime)}`
      : '';
  return `${name}${alone}${people}${departs}`;
}

/** What this conversation is about now: the game, for "moved to 3pm". */
export const aboutGame = (asked: Asked, game: Game) => ({
  ...asked.conversation,
  last: { intent: 'game' as const, slots: { game: game.id } },
});
