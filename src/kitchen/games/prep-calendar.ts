import ICAL from 'ical.js';
import type { Book } from '../../nutrition/book.ts';
import type { Game } from './game.ts';
import { gameUid, packUid, prepUid } from './own-entries.ts';
import { startOf } from './prep/demand.ts';
import { HANDS_ON_MIN } from './prep/prep-day.ts';
import type { PrepPlan } from './prep-plan.ts';
import { gameName, sayGame } from './say-game.ts';

// The library counts without the space a folded line begins with; RFC 5545 §3.1 allows 75 octets with it.
ICAL.foldLength = 74;

const MINUTE_MS = 60_000;
const PACK_MINUTES = 30;
const GAME_MINUTES = 120;

export interface PrepCalendar {
  readonly games: readonly Game[];
  readonly plans: readonly PrepPlan[];
  readonly book: Book;
  readonly nowMs: number;
}

interface Entry {
  readonly uid: string;
  readonly summary: string;
  readonly description?: string;
  readonly place?: string;
  readonly startMs?: number;
  readonly minutes: number;
  readonly date: string;
}

/**
 * Games, preps and packing as an iCalendar (RFC 5545) people can subscribe or import: times in UTC, whole days for
 * games without a time, CRLF and folds as the library writes them. A UID follows from the game, so that importing
 * again moves what is there instead of adding to it. Reminders are not in it: those are told in the channel.
 */
export function prepCalendar({ games, plans, book, nowMs }: PrepCalendar): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.updatePropertyWithValue('version', '2.0');
  calendar.updatePropertyWithValue('prodid', '-//Batchbell//Prep schedule//EN');
  calendar.updatePropertyWithValue('method', 'PUBLISH');
  calendar.updatePropertyWithValue('x-wr-calname', `${book.settings.name} prep`);
  const planned = games.filter(({ status }) => status === 'planned');
  const entries = [...planned.map(gameEntry), ...plans.flatMap((plan) => planEntries(plan, planned, book))];
  for (const entry of entries) calendar.addSubcomponent(eventOf(entry, nowMs));
  return `${calendar.toString()}\r\n`;
}

function gameEntry(game: Game): Entry {
  const startMs = startOf(game);
  const sport = game.sport === undefined || game.opponent === undefined ? '' : `${game.sport} `;
  return {
    uid: gameUid(game.id),
    summary: `Game: ${sport}${gameName(game)}`,
    ...(game.place === undefined ? {} : { place: game.place }),
    ...(startMs === undefined ? {} : { startMs }),
    minutes: GAME_MINUTES,
    date: game.date,
  };
}

function planEntries(plan: PrepPlan, games: readonly Game[], book: Book): Entry[] {
  const recipe = book.recipes.get(plan.recipeId ?? '');
  const served = games.filter(({ id }) => plan.gameIds.includes(id));
  const title = recipe?.title.toLowerCase() ?? 'pieces';
  const description = [...served.map(sayGame), ...plan.reasons, ...plan.conflicts].join('\n');
  const packs = plan.packs.flatMap(({ gameId, pieces, packAtMs }) => {
    const game = served.find(({ id }) => id === gameId);
    if (!game || pieces === 0) return [];
    return [entryAt(packUid(gameId), `Pack ${pieces} ${title} ${gameName(game)}`, packAtMs, PACK_MINUTES)];
  });
  if (plan.pieces === 0) return packs;
  const summary = `Prep ${plan.pieces} ${title} for ${served.map(gameName).join(' and ')}`;
  const prep = entryAt(prepUid(plan.gameIds[0] ?? ''), summary, plan.prepAtMs, HANDS_ON_MIN);
  return [{ ...prep, description }, ...packs];
}

const entryAt = (uid: string, summary: string, startMs: number, minutes: number): Entry => ({
  uid,
  summary,
  startMs,
  minutes,
  date: '',
});

function eventOf(entry: Entry, nowMs: number): ICAL.Component {
  const event = new ICAL.Component('vevent');
  event.updatePropertyWithValue('uid', entry.uid);
  event.updatePropertyWithValue('dtstamp', utcTime(nowMs));
  event.updatePropertyWithValue(
    'dtstart',
    entry.startMs === undefined ? ICAL.Time.fromDateString(entry.date) : utcTime(entry.startMs),
  );
  if (entry.startMs !== undefined) {
    event.updatePropertyWithValue('dtend', utcTime(entry.startMs + entry.minutes * MINUTE_MS));
  }
  event.updatePropertyWithValue('summary', entry.summary);
  if (entry.place !== undefined) event.updatePropertyWithValue('location', entry.place);
  if (entry.description !== undefined) event.updatePropertyWithValue('description', entry.description);
  return event;
}

const utcTime = (ms: number): ICAL.Time =>
  ICAL.Time.fromDateTimeString(`${new Date(ms).toISOString().slice(0, 19)}Z`);
