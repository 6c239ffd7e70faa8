import type { Choices } from '../../../kitchen/settings/choices.ts';
import { type ClockTime, sayTime, zoneName } from '../../../kitchen/time/zone.ts';
import type { KitchenSettings } from '../../../nutrition/book.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { listed } from '../../need-words.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const NAMES: Readonly<Record<keyof Choices, string>> = {
  timeZone: 'time zone',
  caloriesForAthletes: 'calories for athletes',
  mostDays: 'shelf life',
  prepTime: 'prep hour',
  stockCheckTime: 'stock check',
  readingTimes: 'fridge readings',
  closedWeekdays: 'closed days',
  par: 'par',
  kitchenChannel: "the kitchen's channel",
  dietitianChannel: "the dietitian's channel",
};

/** The settings in force, and what was changed just now. */
export function settingsAnswer(
  asked: Asked,
  settings: KitchenSettings,
  choices: Choices,
  changed: readonly string[],
): Answer {
  const names = changed.map((name) => NAMES[name as keyof Choices]);
  const titles = asked.kitchen.book.recipes;
  const par = [...settings.par].map(([id, pieces]) => `${titles.get(id)?.title ?? id} ${pieces}`);
  const said = (time: string) => sayTime(time as ClockTime);
  return {
    title: changed.length > 0 ? `Saved: ${listed(names)}.` : `${settings.name}: how the kitchen works.`,
    sections: [
      {
        kind: 'list',
        items: [
          `Time zone: ${settings.timeZone} (${zoneName(asked.request.nowMs, settings.timeZone)} now)`,
          `Shelf life of cold food: ${settings.mostDays} days, the day made is day 1`,
          `Prep ${said(settings.prepTime)}, stock check ${said(settings.stockCheckTime)}, fridge readings ${listed(settings.readingTimes.map(said)) || 'none'}`,
          `No prep on ${listed(settings.closedWeekdays.map((day) => WEEKDAYS[day - 1] ?? '')) || 'no day'}`,
          `Par: ${par.join(', ') || 'none'}`,
          `Athletes ${settings.caloriesForAthletes ? 'see' : 'do not see'} calories`,
        ],
      },
      ...notes(changed).map((text) => ({ kind: 'text' as const, text })),
    ],
    cautions: [],
    next: [{ label: 'Change settings', says: 'settings', form: { id: 'settings' } }],
    audience: 'asker',
    data: {
      changed,
      timeZone: settings.timeZone,
      caloriesForAthletes: settings.caloriesForAthletes,
      mostDays: settings.mostDays,
      prepTime: settings.prepTime,
      stockCheckTime: settings.stockCheckTime,
      readingTimes: settings.readingTimes,
      closedWeekdays: settings.closedWeekdays,
      par: Object.fromEntries(settings.par),
      chosen: Object.keys(choices),
    },
  };
}

/** What a change does, and what it leaves alone. */
function notes(changed: readonly string[]): string[] {
  return [
    ...(changed.includes('timeZone')
      ? ['Reminders and prep keep their time on the clock, in the new zone. Games keep their own zone.']
      : []),
    ...(changed.includes('mostDays')
      ? ['It counts for batches logged from now on; labels already written keep their date.']
      : []),
  ];
}
