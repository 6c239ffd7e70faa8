import type { Game } from '../../../kitchen/games/game.ts';
import { kindOf } from '../../../kitchen/games/merge-games.ts';
import { type Outlook, outlook, outlookWith, planOf } from '../../../kitchen/games/outlook.ts';
import { recordGame } from '../../../kitchen/games/record-schedule.ts';
import { gameName, sayGame, sayWhen } from '../../../kitchen/games/say-game.ts';
import { changedGame, type ToldInChat, withStatus } from '../../../kitchen/games/tell-game.ts';
import { type CalendarDate, type ClockTime, instantOf, sayInstant } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { effectLines } from '../../games/plan-lines.ts';
import { remindersFollow } from '../../games/tied-reminders.ts';
import { dayMeant, otherHalf, timeIn } from '../../games/when.ts';
import { gameMeant } from '../../games/which-game.ts';
import { doingOf } from '../../stock/desk.ts';
import { askDay, askWhichDay, askWhichGame, askWhichHalf } from './ask-back.ts';
import { gameData, planData } from './data.ts';
import { aboutGame, detailsOf, restOfRequest, timeWords } from './told.ts';

/** "game moved to 3pm", "game Saturday is now Friday 6pm", "game is home now". */
export async function changeGame(asked: Asked): Promise<Answered> {
  const { slots } = asked;
  const before = await outlook(gamesDesk(asked));
  const time = timeIn(slots.when);
  const saysNewDay = slots.when_was !== undefined || !isAboutDayAlone(asked);
  const meant = gameMeant(asked, before.games, slots.when_was ?? (saysNewDay ? undefined : slots.when));
  if (isList(meant)) return askWhichGame(meant, (game) => `game ${game.date} moved to ${newWhen(asked)}`);
  const day = saysNewDay ? dayMeant(asked, slots.when) : undefined;
  if (day?.orDate !== undefined) return askWhichDay(asked, [day.date, day.orDate], time);
  const date = day?.date ?? meant.date;
  if (time !== undefined && slots.time_unsure === true) {
    return askWhichHalf(asked, date, [time, otherHalf(time)].sort(), `game ${meant.date} is now`);
  }
  if (day === undefined && time === undefined && restOfRequest(asked) === '' && slots.recipe === undefined) {
    return askDay(
      `Moved to when? Now it is ${sayGame(meant)}.`,
      `game ${meant.date} is now ${meant.date} 6pm`,
    );
  }
  return changeKnown(asked, before, meant, { date, ...(time === undefined ? {} : { time }) });
}

/** "saturday's game is postponed": the day says which game, not where it moves to. */
function isAboutDayAlone({ slots, request }: Asked): boolean {
  if (slots.when === undefined || timeIn(slots.when) !== undefined) return false;
  return !/\b(?:to|until|till|now)\b/i.test(request.text);
}

const isList = (meant: Game | readonly Game[]): meant is readonly Game[] => Array.isArray(meant);

function newWhen({ slots }: Asked): string {
  const time = timeIn(slots.when);
  return time === undefined ? String(slots.when ?? '3pm') : timeWords(time);
}

/** Details of a game that is known: "bus leaves 6:30 saturday", "44 people for the Riverton game". */
export async function changeDetails(asked: Asked): Promise<Answered> {
  const before = await outlook(gamesDesk(asked));
  const time = timeIn(asked.slots.when);
  if (time !== undefined && asked.slots.opponent !== undefined) {
    return askDay('Which day?', `game Sat ${timeWords(time)}${restOfRequest(asked)}`);
  }
  const meant = gameMeant(asked, before.games, asked.slots.when);
  if (isList(meant)) return askWhichGame(meant, (game) => `game ${game.date}${restOfRequest(asked)}`);
  return changeKnown(asked, before, meant, {});
}

/** Changes one known game and says what follows. */
export async function changeKnown(
  asked: Asked,
  before: Outlook,
  game: Game,
  start: { readonly date?: CalendarDate; readonly time?: ClockTime },
): Promise<Answered> {
  const desk = gamesDesk(asked);
  const zone = desk.book.settings.timeZone;
  const time = start.time ?? game.time;
  const details = await detailsOf(asked, {
    date: start.date ?? game.date,
    ...(time === undefined ? {} : { time }),
  });
  const told: ToldInChat = { ...details.told, ...start };
  const isMoved = start.time !== undefined || (start.date !== undefined && start.date !== game.date);
  const after = changedGame(isMoved ? { ...inZone(game, start.time, zone) } : game, told, desk.nowMs);
  refusePast(after, desk.nowMs);
  await recordGame(desk, doingOf(asked, desk.nowMs), after, game);
  const reminders = await remindersFollow(asked);
  const moved = after.departsMs !== game.departsMs && details.told.departsMs === undefined;
  const assumed = [
    ...details.assumed,
    ...(moved ? ['The departure moved with the start; say "bus leaves 9am" if not.'] : []),
  ];
  return changed(asked, before, game, after, { assumed, reminders });
}

/** A cancelled game that was said again: it is on. */
export async function putOnAgain(asked: Asked, before: Outlook, game: Game): Promise<Answered> {
  const desk = gamesDesk(asked);
  const again = withStatus(game, 'planned', desk.nowMs);
  await recordGame(desk, doingOf(asked, desk.nowMs), again, game);
  const reminders = await remindersFollow(asked);
  return changed(asked, before, game, again, { assumed: [], reminders });
}

/** A new hour is said in the kitchen's zone, whatever zone the calendar used. */
const inZone = (game: Game, time: ClockTime | undefined, zone: string): Game =>
  time === undefined ? game : { ...game, timeZone: zone };

function refusePast(game: Game, nowMs: number): void {
  if (game.time === undefined || instantOf({ date: game.date, time: game.time }, game.timeZone) > nowMs)
    return;
  throw new Problem(
    'bad_quantity',
    `${sayWhen(game)} has passed.`,
    'Give a time to come, like "game moved to 3pm".',
  );
}

interface Besides {
  readonly assumed: readonly string[];
  /** What became of people's own reminders. */
  readonly reminders: readonly string[];
}

function changed(
  asked: Asked,
  before: Outlook,
  was: Game,
  game: Game,
  { assumed, reminders }: Besides,
): Answered {
  const { book } = asked.kitchen;
  const after = outlookWith(before, [game], book, asked.request.nowMs);
  const plan = planOf(after.plans, game.id);
  const zone = book.settings.timeZone;
  const leaves = game.departsMs === undefined ? [] : [`Leaves ${sayInstant(game.departsMs, zone)}`];
  const kind = kindOf(was, game);
  const isMoved = kind === 'moved';
  const head = kind === 'restored' ? 'On again' : isMoved ? 'Moved' : 'Game kept';
  return {
    answer: {
      title: `${head}: ${sayGame(game)}${isMoved ? `. It was ${sayWhen(was)}` : ''}`,
      sections: [
        { kind: 'list', items: [...leaves, ...effectLines(asked, before, after, game), ...reminders] },
        ...(assumed.length > 0 ? [{ kind: 'list' as const, heading: 'Assumed', items: assumed }] : []),
      ],
      cautions: plan?.conflicts ?? [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: { ...gameData(game), ...(isMoved ? { was: sayWhen(was) } : {}), ...(plan ? planData(plan) : {}) },
    },
    conversation: aboutGame(asked, game),
  };
}

/** "saturday's game is cancelled". The game stays on the list, marked, and can be put on again. */
export async function cancelGame(asked: Asked): Promise<Answered> {
  const desk = gamesDesk(asked);
  const before = await outlook(desk);
  const meant = gameMeant(asked, before.games, asked.slots.when_was ?? asked.slots.when);
  if (isList(meant)) return askWhichGame(meant, (game) => `cancel game ${game.date} ${gameName(game)}`);
  if (meant.status === 'cancelled') {
    throw new Problem('not_possible', `${sayGame(meant)} already.`, 'Type "schedule" to see what is on.');
  }
  const game = withStatus(meant, 'cancelled', desk.nowMs);
  await recordGame(desk, doingOf(asked, desk.nowMs), game, meant);
  const reminders = await remindersFollow(asked);
  const after = outlookWith(before, [game], desk.book, desk.nowMs);
  return {
    answer: {
      title: `Cancelled: ${sayGame(meant)}`,
      sections: [{ kind: 'list', items: [...effectLines(asked, before, after, game), ...reminders] }],
      cautions: [],
      next: [{ label: 'It is on again', says: `game ${sayAgain(meant)}` }],
      audience: 'channel',
      data: gameData(game),
    },
    conversation: aboutGame(asked, game),
  };
}

const sayAgain = (game: Game): string =>
  `${game.date}${game.time === undefined ? '' : ` ${timeWords(game.time)}`} ${gameName(game)}`;
