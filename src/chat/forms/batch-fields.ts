import { dateOf } from '../../kitchen/time/zone.ts';
import type { Field, FormAsked, FormValues } from './form.ts';
import { choice, initialOf, textIn } from './values.ts';

/** What is asked about a batch, in the order in which people know it. */
export function batchFields({ kitchen, request }: FormAsked, given: FormValues): readonly Field[] {
  const { recipes, foods, settings } = kitchen.book;
  const withLots = [...foods.values()].filter(({ product }) => product !== undefined);
  return [
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
    ...swapFields(given),
    choice(
      { id: 'place', label: 'Where it is', optional: true },
      settings.locations.map(({ id, name }) => ({ value: id, label: name })),
      textIn(given, 'place'),
    ),
    {
      kind: 'date',
      id: 'day',
      label: 'Day made (day 1 of its date)',
      ...initialOf(given, 'day', dateOf(request.nowMs, settings.timeZone)),
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
    ...(request.asker.role === 'staff' ? [overrideField(given)] : []),
  ];
}

/** A batch that is not as on the card has other allergens: what changed is asked for, never guessed. */
const swapFields = (given: FormValues): Field[] => [
  {
    kind: 'line',
    id: 'used',
    label: 'Swap: what went in instead',
    placeholder: 'sunflower butter',
    hint: 'Left empty: made as on the card.',
    optional: true,
    ...initialOf(given, 'used'),
  },
  {
    kind: 'line',
    id: 'replaced',
    label: 'Swap: instead of what',
    placeholder: 'peanut butter',
    optional: true,
    ...initialOf(given, 'replaced'),
  },
];

const overrideField = (given: FormValues): Field => ({
  kind: 'line',
  id: 'override',
  label: 'Why a product that is not approved was used',
  placeholder: 'dietitian approved by phone',
  hint: 'Only where the dietitian has not approved one of its products. Kept with the batch and your name.',
  optional: true,
  ...initialOf(given, 'override'),
});
