import type { Game } from '../../../kitchen/games/game.ts';
import type { Outlook } from '../../../kitchen/games/outlook.ts';
import { gameName, sayGame, sayWhen } from '../../../kitchen/games/say-game.ts';
import {
  addDays,
  daysBetween,
  instantOf,
  sayDate,
  sayInstant,
  sayTime,
  zoneName,
} from '../../../kitchen/time/zone.ts';
import type { Answered, Asked } from '../../command.ts';
import { spanOf } from '../../games/span.ts';
import { todayOf } from '../../games/when.ts';
import { fits, gamesToCome } from '../../games/which-game.ts';
import { gameData } from '../game/data.ts';
import { weekAnswer } from './week.ts';

const CHANGES_DAYS = 7;
const MS_PER_DAY = 86_400_000;

/** One question about games: next, home or away, start, departure, how many, what changed. */
export function answerAsk(asked: Asked, seen: Outlook, ask: string): Answered {
  switch (ask) {
    case 'count':
      return weekAnswer(asked, seen);
    case 'changes':
      return changes(asked, seen);
    case 'cancelled':
      return isCancelled(asked, seen);
    case 'next':
    case 'home_away':
    case 'start_time':
    case 'departure':
    case 'days_until':
      return aboutNext(asked, seen, ask);
    default:
      return weekAnswer(asked, seen);
  }
}

/** Games the question may be about, in the days it names or all to come. */
function gamesAsked(asked: Asked, seen: Outlook): Game[] {
  const coming = gamesToCome(asked, seen.games).filter((game) => fits(asked, game));
  if (asked.slots.when === undefined) return coming.filter((game) => !hasBegun(asked, game));
  const span = spanOf(asked);
  return coming.filter(({ date }) => date >= span.from && date <= span.to);
}

function hasBegun({ request }: Asked, { date, time, timeZone }: Game): boolean {
  return time !== undefined && instantOf({ date, time }, timeZone) <= request.nowMs;
}

function aboutNext(
  asked: Asked,
  seen: Outlook,
  ask: 'next' | 'home_away' | 'start_time' | 'departure' | 'days_until',
): Answered {
  const planned = gamesAsked(asked, seen).filter(({ status }) => status === 'planned');
  const [game, ...others] = planned;
  if (!game) return noGame(asked, seen);
  const later = others.filter(({ date }) => asked.slots.when !== undefined && date === game.date);
  return {
    answer: {
      title: TITLES[ask](game, asked),
      sections: [
        ...(later.length > 0
          ? [
              {
                kind: 'list' as const,
                heading: 'Also that day',
                items: later.map((each) => TITLES[ask](each, asked)),
              },
            ]
          : []),
        ...(ask === 'next' && others[0] && later.length === 0
          ? [{ kind: 'text' as const, text: `After that: ${sayGame(others[0])}` }]
          : []),
      ],
      cautions: [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: { ...gameData(game), days_until: daysBetween(todayOf(asked), game.date) },
    },
    conversation: {
      ...asked.conversation,
      last: { intent: 'schedule', slots: { ...asked.slots, game: game.id } },
    },
  };
}

const TITLES: Readonly<
  Record<
    'next' | 'home_away' | 'start_time' | 'departure' | 'days_until',
    (game: Game, asked: Asked) => string
  >
> = {
  next: (game, asked) => `${dayCount(game, asked)}: ${sayGame(game)}`,
  days_until: (game, asked) => `${dayCount(game, asked)}: ${sayGame(game)}`,
  home_away: (game) =>
    game.side === undefined
      ? `Not known whether ${gameName(game)} on ${sayDate(game.date)} is home or away`
      : `${game.side === 'home' ? 'Home' : game.side === 'away' ? 'Away' : 'Neutral site'}: ${gameName(game)}, ${sayWhen(game)}${game.place === undefined ? '' : `, ${game.place}`}`,
  start_time: (game) =>
    game.time === undefined
      ? `The time is not announced: ${gameName(game)}, ${sayDate(game.date)}`
      : `${sayTime(game.time)} ${zoneName(instantOf({ date: game.date, time: game.time }, game.timeZone), game.timeZone)}: ${gameName(game)}, ${sayDate(game.date)}`,
  departure: (game, { kitchen }) =>
    game.departsMs === undefined
      ? `No departure is known for ${gameName(game)}, ${sayWhen(game)}${game.side === 'away' ? `. Say "game ${game.date} leaves 7am"` : ''}`
      : `Leaves ${sayInstant(game.departsMs, kitchen.book.settings.timeZone)}: ${gameName(game)}, ${sayWhen(game)}`,
};

function dayCount(game: Game, asked: Asked): string {
  const days = daysBetween(todayOf(asked), game.date);
  return days === 0 ? 'Today' : days === 1 ? 'Tomorrow' : `In ${days} days`;
}

function noGame(asked: Asked, seen: Outlook): Answered {
  const next = gamesToCome(asked, seen.games).find((game) => game.status === 'planned' && fits(asked, game));
  const when = asked.slots.when === undefined ? 'to come' : `on ${spanOf(asked).name}`;
  return {
    answer: {
      title: next
        ? `No game ${when}; the next is ${sayGame(next)}`
        : `No game is known ${asked.slots.when === undefined ? '' : when}`.trim(),
      sections: next
        ? []
        : [{ kind: 'text', text: 'Type "game Sat 2pm vs Riverton", or "import schedule.ics".' }],
      cautions: [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: { games: 0 },
    },
  };
}

function isCancelled(asked: Asked, seen: Outlook): Answered {
  const games = gamesAsked(asked, seen);
  const [game] = games;
  if (!game) return noGame(asked, seen);
  const words = (each: Game): string =>
    each.status === 'cancelled'
      ? `Cancelled: ${gameName(each)}, ${sayWhen(each)}`
      : each.missingMs === undefined
        ? `Still on: ${sayGame(each)}`
        : `Not sure: ${sayGame(each)} is no longer in its calendar`;
  return {
    answer: {
      title: words(game),
      sections:
        games.length > 1 && asked.slots.when !== undefined
          ? [{ kind: 'list', items: games.slice(1, 5).map(words) }]
          : [],
      cautions: [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: gameData(game),
    },
  };
}

/** What moved, was cancelled or came back in the last seven days, and what its calendar no longer lists. */
function changes(asked: Asked, seen: Outlook): Answered {
  const since = asked.request.nowMs - CHANGES_DAYS * MS_PER_DAY;
  const coming = gamesToCome(asked, seen.games).filter((game) => fits(asked, game));
  const items = [
    ...coming.filter(({ was }) => (was?.changedMs ?? 0) >= since).map(changeLine),
    ...coming
      .filter(({ missingMs, status }) => missingMs !== undefined && status === 'planned')
      .map((game) => `${sayGame(game)} is no longer in its calendar`),
  ];
  const from = sayDate(addDays(todayOf(asked), -CHANGES_DAYS));
  return {
    answer: {
      title:
        items.length === 0
          ? `Nothing changed since ${from}`
          : `${items.length} ${items.length === 1 ? 'change' : 'changes'} since ${from}`,
      sections: items.length > 0 ? [{ kind: 'list', items }] : [],
      cautions: [],
      next: [{ label: 'Schedule', says: 'schedule' }],
      audience: 'channel',
      data: { changes: items.length },
    },
  };
}

function changeLine(game: Game): string {
  const { was, timeZone } = game;
  if (game.status === 'cancelled') return `${gameName(game)} is cancelled: ${sayWhen(game)}`;
  if (was?.status === 'cancelled') return `${gameName(game)} is on again: ${sayWhen(game)}`;
  return `${gameName(game)} moved to ${sayWhen(game)}${was ? `, was ${sayWhen({ ...was, timeZone })}` : ''}`;
}
