import type { Choices } from '../../../kitchen/settings/choices.ts';
import type { Slots, SlotValue } from '../../slots.ts';

const isText = (value: SlotValue | undefined): value is string => typeof value === 'string';
const texts = (value: SlotValue | undefined) => (Array.isArray(value) ? value.filter(isText) : undefined);
const numbers = (value: SlotValue | undefined) =>
  Array.isArray(value) ? value.filter((each): each is number => typeof each === 'number') : undefined;

/** What the slots of a `settings` request change; a slot that is absent changes nothing. */
export function choicesIn(slots: Slots): Choices {
  const { most_days: days, calories_for_athletes: calories, par } = slots;
  const found = {
    timeZone: isText(slots.time_zone) ? slots.time_zone : undefined,
    caloriesForAthletes: typeof calories === 'boolean' ? calories : undefined,
    mostDays: typeof days === 'number' ? days : undefined,
    prepTime: isText(slots.prep_time) ? slots.prep_time : undefined,
    stockCheckTime: isText(slots.stock_check_time) ? slots.stock_check_time : undefined,
    readingTimes: texts(slots.reading_times),
    closedWeekdays: numbers(slots.closed_weekdays),
    par: typeof par === 'object' && !Array.isArray(par) ? (par as Record<string, number>) : undefined,
    kitchenChannel: isText(slots.kitchen_channel) ? slots.kitchen_channel : undefined,
    dietitianChannel: isText(slots.dietitian_channel) ? slots.dietitian_channel : undefined,
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined));
}
