import type { Food, ProductLabel } from '../../../nutrition/food.ts';
import type { Answer } from '../../answer.ts';
import type { Asked, Command } from '../../command.ts';
import { listed } from '../../need-words.ts';
import { slotText } from '../../slot-number.ts';
import { supplementHead } from './head.ts';
import { productsMeant, type Registered, registerOf } from './register.ts';

/**
 * What the register says of a product and its lot: approved and tested, approved only, or not approved. Never a
 * verdict for any sports body.
 */
export const supplement: Command = {
  ...supplementHead,
  answers: (asked) => ({ answer: answerFor(asked) }),
};

/** The reply of policy: no product is called safe, clean or permitted. */
const ASK_FIRST = 'Ask your sports dietitian or athletic trainer before any supplement.';

/** World Anti-Doping Code, Article 2.1: the athlete answers for what is in the sample. */
const STRICT =
  'You answer for whatever is in your body, whatever the label says. A third-party test of a lot lowers the risk and does not remove it.';

function answerFor(asked: Asked): Answer {
  const { slots, kitchen } = asked;
  const lot = slotText(slots, 'lot')?.toUpperCase();
  const meant = productsMeant(kitchen.book, slotText(slots, 'supplement'), lot);
  const [only, ...others] = meant;
  const { title, lines, data } =
    only && others.length === 0 ? ofProduct(only, lot) : unnamed(asked, meant, lot);
  return {
    title,
    sections: [
      ...lines.map((text) => ({ kind: 'text', text }) as const),
      {
        kind: 'text',
        text: 'For the NCAA or any other body I give no verdict: ask compliance staff, with the label, before use.',
      },
    ],
    cautions: [STRICT],
    next: [],
    audience: 'asker',
    data,
  };
}

interface Told {
  readonly title: string;
  readonly lines: readonly string[];
  readonly data: Readonly<Record<string, unknown>>;
}

function ofProduct({ food, product }: Registered, lot: string | undefined): Told {
  const data = { product: food.id, approved: product.approvedByDietitian, ...(lot ? { lot } : {}) };
  if (!product.approvedByDietitian) {
    return {
      title: `${food.name} is not approved here: ask your sports dietitian before using it.`,
      lines: [ASK_FIRST],
      data: { ...data, standing: 'not_approved' },
    };
  }
  return lot === undefined ? withoutLot(food, product, data) : withLot(food, product, lot, data);
}

function withLot(food: Food, { lots }: ProductLabel, lot: string, data: Told['data']): Told {
  const known = lots.find((each) => each.lot.toUpperCase() === lot);
  if (known?.batchTested) {
    return {
      title: `${food.name}, lot ${lot}: product approved by the dietitian, lot tested by a third party.`,
      lines: [`Use it as the dietitian says.${known.useBy ? ` Maker's date ${known.useBy}.` : ''}`],
      data: { ...data, standing: 'approved_tested_lot' },
    };
  }
  const why = known ? 'this lot has no third-party test on record' : 'this lot is not on record';
  return {
    title: `${food.name} is approved, but ${why}: ask your sports dietitian before using lot ${lot}.`,
    lines: [lotsLine(lots)],
    data: { ...data, standing: 'approved_other_lot' },
  };
}

const withoutLot = (food: Food, { lots }: ProductLabel, data: Told['data']): Told => ({
  title: `${food.name} is a product the dietitian approved; compare the lot on the package first.`,
  lines: [lotsLine(lots), 'Any other lot: ask your sports dietitian.'],
  data: { ...data, standing: 'approved_lot_not_said', lots: lots.map((each) => each.lot) },
});

function lotsLine(lots: ProductLabel['lots']): string {
  const tested = lots.filter(({ batchTested }) => batchTested).map(({ lot }) => lot);
  return tested.length > 0
    ? `Lots tested by a third party: ${listed(tested)}.`
    : 'No lot of it has a third-party test on record.';
}

/** Nothing on the register, or several products alike: the policy first, then which product to name. */
function unnamed({ kitchen }: Asked, meant: readonly Registered[], lot: string | undefined): Told {
  const approved = (meant.length > 0 ? meant : registerOf(kitchen.book)).filter(
    ({ product }) => product.approvedByDietitian,
  );
  const names = approved.map(({ food }) => food.name);
  const which = lot === undefined ? '' : ` Lot ${lot} is not on record.`;
  return {
    title: ASK_FIRST,
    lines: [
      meant.length > 1
        ? `Which product, and which lot? Approved by the dietitian: ${names.join('; ')}.`
        : `It is not on this kitchen's register.${which} Bring its label and lot number to the dietitian.`,
    ],
    data: { standing: meant.length > 1 ? 'which_product' : 'not_on_register' },
  };
}
