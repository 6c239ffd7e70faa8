import { fahrenheitOf } from '../../kitchen/stock/temperature.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import type { Form, FormAsked } from './form.ts';
import { choice, initialOf, numberIn, textIn } from './values.ts';

/** What the thermometers read, all places at once. */
export const reading: Form = {
  id: 'reading',
  title: 'Fridge readings',
  submit: 'Log readings',
  roles: KITCHEN_ROLES,

  async page(asked, given) {
    return {
      intro: 'Fill in what you read; leave the others empty.',
      fields: [
        ...coldPlaces(asked).map(({ id, name }) => ({
          kind: 'number' as const,
          id,
          label: name,
          isDecimal: true,
          optional: true as const,
          ...initialOf(given, id),
        })),
        choice(
          { id: 'unit', label: 'Degrees' },
          [
            { value: 'F', label: 'Fahrenheit (°F)' },
            { value: 'C', label: 'Celsius (°C)' },
          ],
          textIn(given, 'unit') ?? 'F',
        ),
        {
          kind: 'line',
          id: 'action',
          label: 'Too warm? What was done about it',
          placeholder: 'moved all to Fridge B, called repair',
          optional: true,
          ...initialOf(given, 'action'),
        },
      ],
    };
  },

  read(values, asked) {
    const isCelsius = textIn(values, 'unit') === 'C';
    const faults: Record<string, string> = {};
    const readings = coldPlaces(asked).flatMap(({ id, name }) => {
      const typed = numberIn(values, id);
      if (typed === undefined) return [];
      if (!Number.isFinite(typed)) faults[id] = 'Write a number, like 38 or 3.5.';
      return [{ location: id, name, temp_f: isCelsius ? fahrenheitOf(typed) : typed, typed }];
    });
    const [first] = coldPlaces(asked);
    if (readings.length === 0 && first) faults[first.id] = 'Fill in at least one reading.';
    if (Object.keys(faults).length > 0) return { faults };
    const action = textIn(values, 'action');
    return {
      text: readings.map(({ name, typed }) => `${name} ${typed}${isCelsius ? 'C' : 'F'}`).join(', '),
      reading: {
        intent: 'temperature',
        slots: {
          readings: readings.map(({ location, temp_f }) => ({ location, temp_f })),
          temp_f: readings[0]?.temp_f,
          ...(action === undefined ? {} : { action }),
        },
      },
    };
  },
};

const coldPlaces = ({ kitchen }: FormAsked) =>
  kitchen.book.settings.locations.filter(({ kind }) => kind !== 'room');
