import { isTimeZone } from '../../kitchen/time/zone.ts';
import type { Book } from '../../nutrition/book.ts';
import type { SlotValue } from '../slots.ts';
import type { Form, FormValues } from './form.ts';
import { choice, initialOf, listIn, numberIn, textIn } from './values.ts';

/** The zones of the kitchens this is written for; any other is typed. */
const ZONES = [
  'America/New_York',
  'America/Chicago',
  'America/Denver',
  'America/Phoenix',
  'America/Los_Angeles',
  'America/Anchorage',
  'Pacific/Honolulu',
  'America/Puerto_Rico',
  'America/Toronto',
];
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const TIME = /^([01]?\d|2[0-3]):[0-5]\d$/;

/** How the kitchen works, by its staff. What is left as it was is not written down. */
export const settings: Form = {
  id: 'settings',
  title: 'Kitchen settings',
  submit: 'Save',
  roles: ['staff'],

  async page({ kitchen, request }, given) {
    const { settings: now } = kitchen.book;
    const chosen = (await kitchen.choices?.(request.asker.workspace).get()) ?? {};
    const zones = [...new Set([now.timeZone, ...ZONES])];
    return {
      fields: [
        choice(
          { id: 'zone', label: 'Time zone' },
          zones.map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') })),
          textIn(given, 'zone') ?? now.timeZone,
        ),
        {
          kind: 'line',
          id: 'other_zone',
          label: 'Another time zone',
          placeholder: 'Europe/London',
          optional: true,
          ...initialOf(given, 'other_zone'),
        },
        {
          kind: 'channel',
          id: 'kitchen_channel',
          label: 'Kitchen reminders go to',
          hint: 'Invite me to the channel too.',
          optional: true,
          ...initialOf(given, 'kitchen_channel', chosen.kitchenChannel),
        },
        {
          kind: 'channel',
          id: 'dietitian_channel',
          label: 'What the dietitian must know goes to',
          hint: "Left empty: the kitchen's channel.",
          optional: true,
          ...initialOf(given, 'dietitian_channel', chosen.dietitianChannel),
        },
        { kind: 'time', id: 'prep_time', label: 'Prep hour', ...initialOf(given, 'prep_time', now.prepTime) },
        {
          kind: 'time',
          id: 'stock_check_time',
          label: 'Morning stock check',
          ...initialOf(given, 'stock_check_time', now.stockCheckTime),
        },
        {
          kind: 'line',
          id: 'reading_times',
          label: 'Fridge readings at',
          placeholder: '06:45, 14:00',
          hint: 'Times with commas between; left empty: none.',
          optional: true,
          ...initialOf(given, 'reading_times', now.readingTimes.join(', ')),
        },
        {
          kind: 'choices',
          id: 'closed_weekdays',
          label: 'Days nobody preps',
          optional: true,
          options: WEEKDAYS.map((label, at) => ({ value: String(at + 1), label })),
          initial:
            given.closed_weekdays === undefined
              ? now.closedWeekdays.map(String)
              : listIn(given, 'closed_weekdays'),
        },
        {
          kind: 'number',
          id: 'most_days',
          label: 'Shelf life of cold food, days',
          hint: 'The day made is day 1. The Food Code (model, 3-501.17) allows 7 at the most; your local code may say less.',
          isDecimal: false,
          least: 1,
          most: 7,
          ...initialOf(given, 'most_days', String(now.mostDays)),
        },
        {
          kind: 'lines',
          id: 'par',
          label: 'Par: pieces that should be on the shelf',
          hint: 'A recipe and a number a line, like "Oat bars 24".',
          optional: true,
          ...initialOf(given, 'par', parText(kitchen.book)),
        },
        choice(
          { id: 'calories', label: 'Calories for athletes' },
          [
            { value: 'no', label: 'Not shown' },
            { value: 'yes', label: 'Shown' },
          ],
          textIn(given, 'calories') ?? (now.caloriesForAthletes ? 'yes' : 'no'),
        ),
      ],
    };
  },

  read(values, { kitchen }) {
    const { settings: now } = kitchen.book;
    const faults: Record<string, string> = {};
    const zone = textIn(values, 'other_zone') ?? textIn(values, 'zone') ?? now.timeZone;
    if (!isTimeZone(zone)) faults.other_zone = 'Write a zone like Europe/London or America/Denver.';
    const readingTimes = readTimes(values, faults);
    const days = numberIn(values, 'most_days');
    if (days === undefined || !Number.isInteger(days) || days < 1 || days > 7)
      faults.most_days = 'Write 1 to 7: the Food Code allows 7 days, counting the day made.';
    const closed = listIn(values, 'closed_weekdays').map(Number);
    if (closed.length > 6) faults.closed_weekdays = 'Leave at least one day open.';
    const par = readPar(values, kitchen.book, faults);
    if (Object.keys(faults).length > 0) return { faults };
    const wanted: Record<string, SlotValue | undefined> = {
      time_zone: zone,
      most_days: days,
      prep_time: textIn(values, 'prep_time') ?? now.prepTime,
      stock_check_time: textIn(values, 'stock_check_time') ?? now.stockCheckTime,
      reading_times: readingTimes,
      closed_weekdays: closed,
      par,
      calories_for_athletes: textIn(values, 'calories') === 'yes',
    };
    const channels = {
      kitchen_channel: textIn(values, 'kitchen_channel') ?? '',
      dietitian_channel: textIn(values, 'dietitian_channel') ?? '',
    };
    const before: Record<string, SlotValue> = {
      time_zone: now.timeZone,
      most_days: now.mostDays,
      prep_time: now.prepTime,
      stock_check_time: now.stockCheckTime,
      reading_times: now.readingTimes,
      closed_weekdays: now.closedWeekdays,
      par: Object.fromEntries(now.par),
      calories_for_athletes: now.caloriesForAthletes,
    };
    const changed = Object.entries(wanted).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(before[name]),
    );
    return {
      text: 'settings',
      reading: { intent: 'settings', slots: { ...Object.fromEntries(changed), ...channels } },
    };
  },

  blames: ({ message }) => (/zone/i.test(message) ? 'other_zone' : 'zone'),
};

function readTimes(values: FormValues, faults: Record<string, string>): string[] {
  const times = (textIn(values, 'reading_times') ?? '').split(/[\s,;]+/).filter((time) => time !== '');
  const wrong = times.find((time) => !TIME.test(time));
  if (wrong !== undefined)
    faults.reading_times = `"${wrong.slice(0, 20)}" is not a time; write 06:45, 14:00.`;
  return [...new Set(times.map((time) => time.padStart(5, '0')))].sort();
}

const parText = ({ settings: { par }, recipes }: Book): string =>
  [...par].map(([id, pieces]) => `${recipes.get(id)?.title ?? id} ${pieces}`).join('\n');

/** A recipe by its title or id, and a number. */
function readPar(values: FormValues, book: Book, faults: Record<string, string>): Record<string, number> {
  const par: Record<string, number> = {};
  for (const line of (textIn(values, 'par') ?? '').split('\n').map((each) => each.trim())) {
    if (line === '') continue;
    const said = /^(.+?)[\s:,]+(\d{1,5})$/.exec(line);
    const name = said?.[1]?.toLowerCase();
    const recipe = [...book.recipes.values()].find(
      ({ id, title }) => id === name || title.toLowerCase() === name,
    );
    if (!said || !recipe) {
      faults.par = said
        ? `"${line.slice(0, 40)}": this kitchen has no such recipe.`
        : `"${line.slice(0, 40)}" is not a recipe and a number.`;
      continue;
    }
    par[recipe.id] = Number(said[2]);
  }
  return par;
}
