import { calendarDate, dateOf, sayDate } from '../../kitchen/time/zone.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import type { Faults, Form } from './form.ts';
import { choice, initialOf, numberIn, textIn, whenIn } from './values.ts';

/** What came out of the kitchen: "made 40 oat bars", filled in. */
export const batch: Form = {
  id: 'batch',
  title: 'Log a batch',
  submit: 'Log it',
  roles: KITCHEN_ROLES,

  async page({ kitchen, request }, given) {
    const { recipes, foods, settings } = kitchen.book;
    const today = dateOf(request.nowMs, settings.timeZone);
    const withLots = [...foods.values()].filter(({ product }) => product !== undefined);
    return {
      intro: 'As on the card. Made with a swap? Write it instead, like "made 40 oat bars with oat milk".',
      fields: [
        choice(
          { id: 'recipe', label: 'What was made' },
          [...recipes.values()].map(({ id, title }) => ({ value: id, label: title })),
          textIn(given, 'recipe'),
        ),
        {
          kind: 'number',
          id: 'pieces',
          label: 'Pieces that came out',
          isDecimal: false,
          least: 1,
          ...initialOf(given, 'pieces'),
        },
        choice(
          { id: 'place', label: 'Where it is', optional: true },
          settings.locations.map(({ id, name }) => ({ value: id, label: name })),
          textIn(given, 'place'),
        ),
        {
          kind: 'date',
          id: 'day',
          label: 'Day made (day 1 of its date)',
          ...initialOf(given, 'day', today),
        },
        {
          kind: 'time',
          id: 'time',
          label: 'Time it was done',
          hint: 'Left empty: now.',
          optional: true,
          ...initialOf(given, 'time'),
        },
        {
          kind: 'line',
          id: 'lot',
          label: "Maker's lot that went in",
          placeholder: 'L42',
          optional: true,
          ...initialOf(given, 'lot'),
        },
        ...(withLots.length > 0
          ? [
              choice(
                { id: 'lot_of', label: 'Whose lot', optional: true },
                withLots.map(({ id, name }) => ({ value: id, label: name })),
                textIn(given, 'lot_of'),
              ),
            ]
          : []),
      ],
    };
  },

  read(values, { kitchen }) {
    const recipe = textIn(values, 'recipe');
    const quantity = numberIn(values, 'pieces');
    const faults: Record<string, string> = {
      ...(recipe === undefined ? { recipe: 'Choose what was made.' } : {}),
      ...piecesFault(quantity),
    };
    if (Object.keys(faults).length > 0 || recipe === undefined || quantity === undefined) return { faults };
    const place = textIn(values, 'place');
    const lot = textIn(values, 'lot');
    const lotOf = textIn(values, 'lot_of');
    const day = textIn(values, 'day');
    const title = kitchen.book.recipes.get(recipe)?.title.toLowerCase() ?? recipe;
    return {
      text: `made ${quantity} ${title}${day === undefined ? '' : `, ${sayDate(calendarDate(day))}`}`,
      reading: {
        intent: 'made',
        slots: {
          recipe,
          quantity,
          made: whenMade(values, kitchen.book.settings.timeZone, kitchen.clock.nowMs()),
          ...(place === undefined ? {} : { location: place }),
          ...(lot === undefined ? {} : { lot }),
          ...(lot === undefined || lotOf === undefined ? {} : { ingredient: lotOf }),
        },
      },
    };
  },

  blames(code, message) {
    if (/\blot\b/i.test(message)) return 'lot';
    if (/time|days ago/i.test(message)) return 'day';
    return code === 'bad_quantity' ? 'pieces' : 'recipe';
  },
};

/** Today without a time is now. */
function whenMade(values: Parameters<Form['read']>[0], zone: string, nowMs: number): string | undefined {
  if (textIn(values, 'time') === undefined && textIn(values, 'day') === dateOf(nowMs, zone)) return undefined;
  return whenIn(values, 'day', 'time');
}

/** What is wrong with a count of pieces, if anything. */
export function piecesFault(pieces: number | undefined): Faults {
  if (pieces !== undefined && Number.isInteger(pieces) && pieces > 0) return {};
  return { pieces: 'Write a whole number above zero.' };
}
