import { calendarDate, dateOf, sayDate } from '../../kitchen/time/zone.ts';
import { KITCHEN_ROLES } from '../roles.ts';
import { batchFields } from './batch-fields.ts';
import type { Faults, Form, FormValues, Trouble } from './form.ts';
import { numberIn, textIn, whenIn } from './values.ts';

/** What came out of the kitchen: "made 40 oat bars", filled in. */
export const batch: Form = {
  id: 'batch',
  title: 'Log a batch',
  submit: 'Log it',
  roles: KITCHEN_ROLES,

  page: async (asked, given) => ({ fields: batchFields(asked, given) }),

  read(values, { kitchen }) {
    const recipe = textIn(values, 'recipe');
    const quantity = numberIn(values, 'pieces');
    const faults = { ...faultsIn(values), ...piecesFault(quantity) };
    if (Object.keys(faults).length > 0 || recipe === undefined || quantity === undefined) return { faults };
    const { timeZone } = kitchen.book.settings;
    const said = {
      location: textIn(values, 'place'),
      ingredient: textIn(values, 'used'),
      replaced: textIn(values, 'replaced'),
      lot: textIn(values, 'lot'),
      lot_of: textIn(values, 'lot') === undefined ? undefined : textIn(values, 'lot_of'),
      override: textIn(values, 'override'),
    };
    const title = kitchen.book.recipes.get(recipe)?.title.toLowerCase() ?? recipe;
    return {
      text: inWords(quantity, title, values),
      reading: {
        intent: 'made',
        slots: {
          recipe,
          quantity,
          made: whenMade(values, timeZone, kitchen.clock.nowMs()),
          ...Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)),
        },
      },
    };
  },

  blames: blamed,
};

function faultsIn(values: FormValues): Faults {
  const has = (id: string): boolean => textIn(values, id) !== undefined;
  return {
    ...(has('recipe') ? {} : { recipe: 'Choose what was made.' }),
    ...(has('replaced') && !has('used')
      ? { used: 'Write what went in instead, like sunflower butter.' }
      : {}),
    // Of the card or of what was swapped in: a lot is never guessed onto a product.
    ...(has('lot') && has('used') && !has('lot_of') ? { lot_of: 'Choose whose lot it is.' } : {}),
  };
}

/** As somebody would have written it, for the record. */
function inWords(pieces: number, title: string, values: FormValues): string {
  const [used, replaced, override, day] = ['used', 'replaced', 'override', 'day'].map((id) =>
    textIn(values, id),
  );
  return [
    `made ${pieces} ${title}`,
    used === undefined ? '' : ` with ${used}`,
    used === undefined || replaced === undefined ? '' : ` instead of ${replaced}`,
    day === undefined ? '' : `, ${sayDate(calendarDate(day))}`,
    override === undefined ? '' : ` override: ${override}`,
  ].join('');
}

function blamed({ code, message, asks, values }: Trouble): string {
  if (asks === 'replaced') return 'replaced';
  if (code === 'unknown_food') {
    const replaced = textIn(values, 'replaced');
    return replaced !== undefined && message.includes(`"${replaced}"`) ? 'replaced' : 'used';
  }
  if (/not approved|override/i.test(message)) return 'override';
  if (/\blot\b/i.test(message)) return 'lot';
  if (/time|days ago/i.test(message)) return 'day';
  return code === 'bad_quantity' ? 'pieces' : 'recipe';
}

/** Today without a time is now. */
function whenMade(values: FormValues, zone: string, nowMs: number): string | undefined {
  if (textIn(values, 'time') === undefined && textIn(values, 'day') === dateOf(nowMs, zone)) return undefined;
  return whenIn(values, 'day', 'time');
}

/** What is wrong with a count of pieces, if anything. */
export function piecesFault(pieces: number | undefined): Faults {
  if (pieces !== undefined && Number.isInteger(pieces) && pieces > 0) return {};
  return { pieces: 'Write a whole number above zero.' };
}
