import type { Insertable, Selectable } from 'kysely';
import type { CalendarSource, Game, GameBefore, GameStatus, Side } from '../kitchen/games/game.ts';
import type { CalendarDate, ClockTime } from '../kitchen/time/zone.ts';
import { present } from './present.ts';
import type { CalendarsTable, GamesTable } from './schema.ts';

export function gameOf(row: Selectable<GamesTable>): Game {
  return {
    id: row.id,
    ...present('calendarId', row.calendar_id),
    uid: row.uid,
    ...present('recurrenceId', row.recurrence_id),
    sequence: row.sequence,
    ...present('stampMs', row.stamp_ms),
    title: row.title,
    ...present('sport', row.sport),
    ...present('opponent', row.opponent),
    ...present('side', row.side as Side | null),
    ...present('place', row.place),
    date: row.local_date as CalendarDate,
    ...present('time', row.local_time as ClockTime | null),
    timeZone: row.time_zone,
    ...present('departsMs', row.departs_ms),
    ...present('people', row.people),
    ...present('recipeId', row.recipe_id),
    status: row.status as GameStatus,
    updatedMs: row.updated_ms,
    ...present('was', row.was === null ? null : (JSON.parse(row.was) as GameBefore)),
    ...present('calendarSays', row.calendar_says),
    ...present('missingMs', row.missing_ms),
  };
}

export function gameRow(workspace: string, game: Game): Insertable<GamesTable> {
  return {
    workspace,
    id: game.id,
    calendar_id: game.calendarId ?? null,
    uid: game.uid,
    recurrence_id: game.recurrenceId ?? null,
    sequence: game.sequence,
    stamp_ms: game.stampMs ?? null,
    title: game.title,
    sport: game.sport ?? null,
    opponent: game.opponent ?? null,
    side: game.side ?? null,
    place: game.place ?? null,
    local_date: game.date,
    local_time: game.time ?? null,
    time_zone: game.timeZone,
    departs_ms: game.departsMs ?? null,
    people: game.people ?? null,
    recipe_id: game.recipeId ?? null,
    status: game.status,
    updated_ms: game.updatedMs,
    was: game.was ? JSON.stringify(game.was) : null,
    calendar_says: game.calendarSays ?? null,
    missing_ms: game.missingMs ?? null,
  };
}

export function calendarOf(row: Selectable<CalendarsTable>): CalendarSource {
  return {
    id: row.id,
    name: row.name,
    ...present('url', row.url),
    ...present('etag', row.etag),
    ...present('readMs', row.read_ms),
    ...present('nextReadMs', row.next_read_ms),
    ...present('problem', row.problem),
    reads: row.reads,
  };
}

export function calendarRow(workspace: string, calendar: CalendarSource): Insertable<CalendarsTable> {
  return {
    workspace,
    id: calendar.id,
    name: calendar.name,
    url: calendar.url ?? null,
    etag: calendar.etag ?? null,
    read_ms: calendar.readMs ?? null,
    next_read_ms: calendar.nextReadMs ?? null,
    problem: calendar.problem ?? null,
    reads: calendar.reads ?? 0,
  };
}
