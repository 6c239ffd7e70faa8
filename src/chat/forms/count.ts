import { firstOut } from '../../kitchen/stock/choose.ts';
import type { Holding } from '../../kitchen/stock/ledger.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import type { Intent } from '../slots.ts';
import { batchText, piecesOf } from '../stock/words.ts';
import { piecesFault } from './batch.ts';
import type { Form, FormAsked, Option } from './form.ts';
import { choice, initialOf, numberIn, textIn } from './values.ts';

const DOINGS: readonly (Option & { readonly value: Intent })[] = [
  { value: 'served', label: 'Served: handed out' },
  { value: 'tossed', label: 'Tossed: thrown out' },
  { value: 'counted', label: 'Counted: this is what is there' },
];
const REASONS: readonly Option[] = [
  { value: 'expired', label: 'Past its date' },
  { value: 'dropped', label: 'Dropped or spoiled by hand' },
  { value: 'warm', label: 'Out of the fridge too long' },
  { value: 'quality', label: 'Not good enough to serve' },
  { value: 'leftover', label: 'Left over after service' },
];

/** What left the shelf, or what a count by hand found: one batch in one place. */
export const count: Form = {
  id: 'count',
  title: 'Serve, toss or count',
  submit: 'Log it',
  roles: KITCHEN_ROLES,

  async page(asked, given) {
    const { kitchen, request } = asked;
    const holdings = firstOut(await kitchen.ledgers(request.asker.workspace).holdings());
    if (holdings.length === 0)
      return { intro: 'Nothing is in stock. Log a batch first; then it can be served.', fields: [] };
    return {
      fields: [
        choice({ id: 'doing', label: 'What happened' }, DOINGS, textIn(given, 'doing') ?? 'served'),
        choice(
          { id: 'batch', label: 'Which pieces (first to go is on top)' },
          holdings.map((holding) => ({ value: keyOf(holding), label: sayOption(holding, asked) })),
          textIn(given, 'batch'),
        ),
        {
          kind: 'number',
          id: 'pieces',
          label: 'Pieces',
          hint: 'Served or tossed: left empty means all of them.',
          isDecimal: false,
          least: 0,
          optional: true,
          ...initialOf(given, 'pieces'),
        },
        choice({ id: 'reason', label: 'Why tossed', optional: true }, REASONS, textIn(given, 'reason')),
        {
          kind: 'line',
          id: 'team',
          label: 'Served to which team or where',
          hint: 'Never a person.',
          optional: true,
          ...initialOf(given, 'team'),
        },
      ],
    };
  },

  read(values, { kitchen }) {
    const doing = DOINGS.find(({ value }) => value === textIn(values, 'doing'));
    const chosen = textIn(values, 'batch');
    const quantity = numberIn(values, 'pieces');
    const faults = {
      ...(doing ? {} : { doing: 'Choose what happened.' }),
      ...(chosen === undefined ? { batch: 'Choose the batch.' } : {}),
      ...quantityFault(quantity, doing?.value),
    };
    if (Object.keys(faults).length > 0 || !doing || chosen === undefined) return { faults };
    const [code = '', location = ''] = chosen.split('@');
    const reason = textIn(values, 'reason');
    const team = textIn(values, 'team');
    const place = kitchen.book.settings.locations.find(({ id }) => id === location);
    return {
      text: `${doing.value} ${quantity ?? 'all'} of ${code}${place ? ` in ${place.name}` : ''}`,
      reading: {
        intent: doing.value,
        slots: {
          batch: code,
          ...(place ? { location } : {}),
          quantity: quantity ?? 'all',
          ...(doing.value === 'tossed' && reason !== undefined ? { note: reason } : {}),
          ...(doing.value === 'served' && team !== undefined ? { team } : {}),
        },
      },
    };
  },

  blames: ({ code }) => (code === 'not_found' ? 'batch' : 'pieces'),
};

const keyOf = ({ batch, location }: Holding): string => `${batch.code}@${location}`;

const sayOption = (holding: Holding, { kitchen, request }: FormAsked): string =>
  `${piecesOf(holding.pieces, holding.batch)}: ${batchText({ kitchen, request, slots: {}, conversation: {} }, holding)}`;

function quantityFault(quantity: number | undefined, doing: Intent | undefined) {
  if (doing === 'counted')
    return quantity !== undefined && Number.isInteger(quantity) && quantity >= 0
      ? {}
      : { pieces: 'Write how many are there: a whole number, 0 for none.' };
  return quantity === undefined ? {} : piecesFault(quantity);
}
