import { calendarDate, sayDate } from '../../kitchen/time/zone.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import type { Form } from './form.ts';
import { choice, initialOf, numberIn, textIn, whenIn } from './values.ts';

const SIDES = [
  { value: 'home', label: 'Home' },
  { value: 'away', label: 'Away' },
  { value: 'neutral', label: 'Neutral ground' },
] as const;

/** A game to prepare for; one that is known already, by its day and opponent, is changed. */
export const game: Form = {
  id: 'game',
  title: 'Add a game',
  submit: 'Add it',
  roles: KITCHEN_ROLES,

  async page({ kitchen }, given) {
    const { recipes, settings } = kitchen.book;
    const usual = settings.gamePeople === undefined ? '' : ` Left empty: ${settings.gamePeople}.`;
    return {
      intro: `Times are of ${settings.timeZone}. Prep and packing are planned from this.`,
      fields: [
        { kind: 'date', id: 'day', label: 'Day', ...initialOf(given, 'day') },
        { kind: 'time', id: 'time', label: 'Start', optional: true, ...initialOf(given, 'time') },
        { kind: 'line', id: 'opponent', label: 'Opponent', optional: true, ...initialOf(given, 'opponent') },
        choice({ id: 'side', label: 'Where', optional: true }, SIDES, textIn(given, 'side')),
        { kind: 'line', id: 'sport', label: 'Sport', optional: true, ...initialOf(given, 'sport') },
        {
          kind: 'time',
          id: 'leaves',
          label: 'Bus leaves',
          optional: true,
          ...initialOf(given, 'leaves'),
        },
        {
          kind: 'number',
          id: 'people',
          label: 'People to feed',
          hint: `Players and staff who travel.${usual}`,
          isDecimal: false,
          least: 1,
          most: 2_000,
          optional: true,
          ...initialOf(given, 'people'),
        },
        choice(
          { id: 'recipe', label: 'Snack', optional: true },
          [...recipes.values()].map(({ id, title }) => ({ value: id, label: title })),
          textIn(given, 'recipe'),
        ),
      ],
    };
  },

  read(values) {
    const day = textIn(values, 'day');
    const people = numberIn(values, 'people');
    const isPeople = people === undefined || (Number.isInteger(people) && people > 0 && people <= 2_000);
    const faults = {
      ...(day === undefined ? { day: 'Choose the day of the game.' } : {}),
      ...(isPeople ? {} : { people: 'Write a whole number from 1 to 2000.' }),
    };
    if (Object.keys(faults).length > 0 || day === undefined) return { faults };
    const opponent = textIn(values, 'opponent');
    const said = {
      opponent,
      home_away: textIn(values, 'side'),
      sport: textIn(values, 'sport'),
      departs: textIn(values, 'leaves'),
      people,
      recipe: textIn(values, 'recipe'),
    };
    return {
      text: `game ${sayDate(calendarDate(day))} ${day.slice(0, 4)}${opponent === undefined ? '' : ` vs ${opponent}`}`,
      reading: {
        intent: 'game',
        slots: {
          when: whenIn(values, 'day', 'time'),
          ...Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)),
        },
      },
    };
  },

  blames({ message }) {
    if (/bus|leave/i.test(message)) return 'leaves';
    if (/time/i.test(message)) return 'time';
    return /people/i.test(message) ? 'people' : 'day';
  },
};
