import type { Game } from '../../../kitchen/games/game.ts';
import { type Outlook, outlook, outlookWith, planOf } from '../../../kitchen/games/outlook.ts';
import { recordGame } from '../../../kitchen/games/record-schedule.ts';
import { gameName, sayGame } from '../../../kitchen/games/say-game.ts';
import { newGame } from '../../../kitchen/games/tell-game.ts';
import { type CalendarDate, type ClockTime, daysBetween, instantOf } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { gamesDesk } from '../../games/desk.ts';
import { effectLines } from '../../games/plan-lines.ts';
import { remindersFollow } from '../../games/tied-reminders.ts';
import { dayMeant, otherHalf, timeIn, todayOf } from '../../games/when.ts';
import { fits } from '../../games/which-game.ts';
import { doingOf } from '../../stock/desk.ts';
import { askDay, askWhichDay, askWhichHalf } from './ask-back.ts';
import { changeDetails, changeKnown, putOnAgain } from './change.ts';
import { gameData, planData } from './data.ts';
import { aboutGame, type Details, detailsOf } from './told.ts';

/**
 * Keeps a game: "game Sat 2pm vs Riverton", "game 12/5 away 9am leave 6:30". One that is known already (same day, same
 * opponent or time) is changed, so that saying it twice keeps one game.
 */
export async function addGame(asked: Asked): Promise<Answered> {
  const { slots } = asked;
  const day = dayMeant(asked, slots.when);
  const time = timeIn(slots.when);
  if (!day)
    return slots.when === undefined || time !== undefined
      ? changeDetails(asked)
      : askDay('Which day?', 'game Sat 2pm vs Riverton');
  if (day.orDate !== undefined) return todayOrLater(asked, day.date, day.orDate, time);
  return keep(asked, day.date, time);
}

/** A weekday's own name on that day: asked, unless the hour has gone by today. */
async function todayOrLater(
  asked: Asked,
  today: CalendarDate,
  later: CalendarDate,
  time: ClockTime | undefined,
): Promise<Answered> {
  const zone = asked.kitchen.book.settings.timeZone;
  const sure = time !== undefined && asked.slots.time_unsure !== true;
  if (sure && instantOf({ date: today, time }, zone) <= asked.request.nowMs) return keep(asked, later, time);
  return askWhichDay(asked, [today, later], time);
}

async function keep(asked: Asked, date: CalendarDate, time: ClockTime | undefined): Promise<Answered> {
  if (time !== undefined && asked.slots.time_unsure === true) {
    return askWhichHalf(asked, date, [time, otherHalf(time)].sort(), 'game');
  }
  refusePast(asked, date, time);
  const desk = gamesDesk(asked);
  const before = await outlook(desk);
  const known = knownGame(asked, before, date, time);
  if (known?.status === 'cancelled') return putOnAgain(asked, before, known);
  if (known) return changeKnown(asked, before, known, { date, ...(time === undefined ? {} : { time }) });
  const start = { date, ...(time === undefined ? {} : { time }) };
  const details = await detailsOf(asked, start);
  const game = newGame({ ...details.told, ...start }, desk.book.settings.timeZone, desk.nowMs);
  await recordGame(desk, doingOf(asked, desk.nowMs), game);
  await remindersFollow(asked);
  return kept(asked, before, game, details);
}

function refusePast(asked: Asked, date: CalendarDate, time: ClockTime | undefined): void {
  if (time === undefined) return;
  if (instantOf({ date, time }, asked.kitchen.book.settings.timeZone) > asked.request.nowMs) return;
  throw new Problem('bad_quantity', 'That time has passed.', 'Give a time to come, like "game Sat 2pm".');
}

/** The game of that day that is the same one as far as was said: planned, or cancelled at that very time. */
function knownGame(
  asked: Asked,
  { games }: Outlook,
  date: CalendarDate,
  time: ClockTime | undefined,
): Game | undefined {
  const isNamed = asked.slots.opponent !== undefined;
  const ofDay = games.filter((game) => game.date === date && fits(asked, game));
  return (
    ofDay.find(
      (game) => game.status === 'planned' && (isNamed || time === undefined || game.time === time),
    ) ?? ofDay.find((game) => game.status === 'cancelled' && game.time === time)
  );
}

function kept(asked: Asked, before: Outlook, game: Game, { assumed }: Details): Answered {
  const { book } = asked.kitchen;
  const after = outlookWith(before, [game], book, asked.request.nowMs);
  const plan = planOf(after.plans, game.id);
  const days = daysBetween(todayOf(asked), game.date);
  const inDays = days === 0 ? 'today' : days === 1 ? 'tomorrow' : `in ${days} days`;
  return {
    answer: {
      title: `Game kept: ${sayGame(game)}, ${inDays}`,
      sections: [
        { kind: 'list', items: effectLines(asked, before, after, game) },
        ...(plan && plan.reasons.length > 0
          ? [{ kind: 'list' as const, heading: 'Why', items: plan.reasons }]
          : []),
        ...(assumed.length > 0 ? [{ kind: 'list' as const, heading: 'Assumed', items: assumed }] : []),
      ],
      cautions: plan?.conflicts ?? [],
      next: [
        { label: 'Schedule', says: 'schedule' },
        { label: 'Cancel this game', says: `cancel game ${game.date} ${gameName(game)}` },
      ],
      audience: 'channel',
      data: { ...gameData(game), ...(plan ? planData(plan) : {}) },
    },
    conversation: aboutGame(asked, game),
  };
}
