import type { KitchenSettings } from '../../../nutrition/book.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { lastDay } from '../../stock/date-mark.ts';
import {
  addDays,
  type CalendarDate,
  type ClockTime,
  clockTime,
  daysBetween,
  instantOf,
  sayDate,
  sayInstant,
  sayTime,
  weekdayOf,
} from '../../time/zone.ts';

/** Weighing, mixing, pressing and cutting one round of slabs: common practice, no source. */
export const HANDS_ON_MIN = 60;
/** Nobody starts before this hour: common practice, no source. */
const FIRST_HOUR = '05:00' as ClockTime;

export interface PrepDay {
  readonly prepAtMs: number;
  readonly latestStartMs: number;
  readonly useBy?: CalendarDate;
  readonly reasons: readonly string[];
  readonly conflicts: readonly string[];
}

/** Days of the date mark, the day made being day 1; undefined for what is kept at room temperature. */
export function daysOf(recipe: Recipe, settings: KitchenSettings): number | undefined {
  return recipe.storage === 'room' ? undefined : Math.min(recipe.shelfLifeDays, settings.mostDays);
}

/** The last day of what is made on a date; undefined when only its shelf life counts and no date mark. */
export function useByOf(
  recipe: Recipe,
  settings: KitchenSettings,
  made: CalendarDate,
): CalendarDate | undefined {
  const days = daysOf(recipe, settings);
  return days === undefined ? undefined : lastDay(made, days, []);
}

interface Candidate {
  readonly date: CalendarDate;
  readonly atMs: number;
  readonly isOpen: boolean;
  readonly isUsualHour: boolean;
}

/**
 * When to make it: at the kitchen's hour on the day before the game; earlier when it would not be set by `readyByMs`
 * or that day is closed; on the game's own day only when every earlier day is closed or would run past its use-by.
 */
export function prepDay(
  recipe: Recipe,
  gameDate: CalendarDate,
  readyByMs: number,
  settings: KitchenSettings,
): PrepDay {
  const needMs = (HANDS_ON_MIN + (recipe.set?.leastMin ?? 0)) * 60_000;
  const latestStartMs = readyByMs - needMs;
  const candidates = candidatesFor(recipe, gameDate, latestStartMs, settings);
  const chosen = candidates.find((day) => day.isOpen) ?? candidates[0];
  const place = { recipe, gameDate, settings, latestStartMs };
  if (!chosen) return tooLate(place);
  return told(place, chosen);
}

interface Place {
  readonly recipe: Recipe;
  readonly gameDate: CalendarDate;
  readonly settings: KitchenSettings;
  readonly latestStartMs: number;
}

/** Days that are in time and in date, the best first. */
function candidatesFor(
  recipe: Recipe,
  gameDate: CalendarDate,
  latestStartMs: number,
  settings: KitchenSettings,
): Candidate[] {
  const zone = settings.timeZone;
  const mostBack = Math.min((daysOf(recipe, settings) ?? recipe.shelfLifeDays) - 1, 14);
  const closed = new Set(settings.closedWeekdays);
  const found: Candidate[] = [];
  for (const back of [...Array.from({ length: mostBack }, (_, i) => i + 1), 0]) {
    const date = addDays(gameDate, -back);
    const usualMs = instantOf({ date, time: clockTime(settings.prepTime) }, zone);
    const isUsualHour = usualMs <= latestStartMs;
    const atMs = isUsualHour || back > 0 ? usualMs : latestStartMs;
    if (atMs > latestStartMs || atMs < instantOf({ date, time: FIRST_HOUR }, zone)) continue;
    found.push({ date, atMs, isOpen: !closed.has(weekdayOf(date)), isUsualHour });
  }
  return found;
}

function told({ recipe, gameDate, settings, latestStartMs }: Place, chosen: Candidate): PrepDay {
  const useBy = useByOf(recipe, settings, chosen.date);
  const usual = sayTime(clockTime(settings.prepTime));
  const reasons = [
    chosen.isUsualHour
      ? `made ${dayWords(chosen.date, gameDate)} at ${usual}`
      : `made on the day itself, before ${usual}, to be set in time`,
    ...skipped(chosen.date, gameDate, latestStartMs, settings, recipe),
    ...(recipe.set
      ? [`sets ${recipe.set.leastMin} min at least, ${recipe.set.betterMin} min is better`]
      : []),
    ...(useBy === undefined ? [] : [`good through ${sayDate(useBy)}`]),
  ];
  const conflicts = chosen.isOpen
    ? []
    : [
        `${sayDate(chosen.date)} is a closed day, but every open day is too late to set or too early to be in date. Open the kitchen or choose what keeps longer.`,
      ];
  return { prepAtMs: chosen.atMs, latestStartMs, ...(useBy ? { useBy } : {}), reasons, conflicts };
}

/** Says for every day between the chosen one and the game why it was passed over. */
function skipped(
  chosen: CalendarDate,
  gameDate: CalendarDate,
  latestStartMs: number,
  settings: KitchenSettings,
  recipe: Recipe,
): string[] {
  if (chosen === gameDate) {
    const days = daysOf(recipe, settings) ?? recipe.shelfLifeDays;
    return [days < 2 ? 'keeps one day only' : 'the days before are closed'];
  }
  const reasons: string[] = [];
  for (let date = addDays(gameDate, -1); date > chosen; date = addDays(date, -1)) {
    const usualMs = instantOf({ date, time: clockTime(settings.prepTime) }, settings.timeZone);
    if (usualMs > latestStartMs) reasons.push(`${sayDate(date)} would be too late to set before packing`);
    else if (settings.closedWeekdays.includes(weekdayOf(date))) reasons.push(`${sayDate(date)} is closed`);
  }
  return reasons;
}

function dayWords(date: CalendarDate, gameDate: CalendarDate): string {
  const back = daysBetween(date, gameDate);
  const relation = back === 0 ? 'on the day' : back === 1 ? 'the day before' : `${back} days before`;
  return `${relation} (${sayDate(date)})`;
}

/** No day fits: the last moment that could have worked, with what stands against it. */
function tooLate({ recipe, gameDate, settings, latestStartMs }: Place): PrepDay {
  const days = daysOf(recipe, settings) ?? recipe.shelfLifeDays;
  return {
    prepAtMs: latestStartMs,
    latestStartMs,
    reasons: [],
    conflicts: [
      `${recipe.title} keep ${days === 1 ? 'one day' : `${days} days`} counting the day made, so they cannot be made, set and still be in date for ${sayDate(gameDate)}: to be packed in time they would have to start by ${sayInstant(latestStartMs, settings.timeZone)}. Choose what keeps longer or sets faster.`,
    ],
  };
}
