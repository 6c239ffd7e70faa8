import { sayGame } from '../../../kitchen/games/say-game.ts';
import type { Eaters } from '../../../kitchen/production/eaters.ts';
import type { FromStock } from '../../../kitchen/production/on-hand.ts';
import type { PlannedVariant, ProductionPlan } from '../../../kitchen/production/production-plan.ts';
import { sayDate, sayInstant } from '../../../kitchen/time/zone.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { CROSS_CONTACT, isAllergy, reactionCaution } from '../../need-words.ts';
import { labelFile } from '../../stock/label.ts';
import { lineText } from '../swap/offer-text.ts';
import { labelOf } from './labels.ts';
import type { Occasion } from './occasion.ts';
import { dataOf } from './plan-data.ts';
import { eatersText, variantNames } from './variant-words.ts';
import type { WhoEats } from './who-eats.ts';
import { workSteps } from './work-steps.ts';

/** What is practice and what is law about working with allergens, and what a sanitizer cannot do. */
const PRACTICE =
  'This order, the full clean between and separate tools are practice; the model Food Code does not prescribe them. Sanitizer kills germs and does not remove allergens: wash with detergent and rinse first.';

/** The plan: who is not fed first, then how much of what, who gets it, the order of work and the labels. */
export function planAnswer(asked: Asked, occasion: Occasion, who: WhoEats, plan: ProductionPlan): Answer {
  const { book } = asked.kitchen;
  const { variants } = plan;
  const names = variantNames(variants);
  const labels = variants.flatMap((variant, at) =>
    variant.made > 0 ? [{ name: names[at], lines: labelOf(variant, book) }] : [],
  );
  const needs = who.eaters.flatMap(({ avoid }) => avoid);
  return {
    title: titleOf(occasion, plan),
    sections: [
      ...notFed(plan),
      ...listOf('Before anything is made', [...who.warnings, ...plan.conflicts, ...lateness(asked, plan)]),
      ...makeTable(plan, names),
      ...listOf(
        'From stock',
        variants.flatMap(({ fromStock }, at) =>
          fromStock.length > 0 ? [`${names[at]}: ${stockText(fromStock)}`] : [],
        ),
      ),
      ...variants.flatMap(({ swaps }, at) =>
        listOf(`Swaps in ${names[at]}, for a recipe as on the card`, swaps.map(lineText)),
      ),
      ...listOf(
        'Who gets what',
        variants.flatMap(({ eaters }, at) =>
          eaters.map((each) => `${eatersText(each)}: ${names[at]}, ${each.piecesEach} each`),
        ),
      ),
      ...workSteps(asked, occasion, plan, names),
      ...(variants.length > 0 ? [{ kind: 'text', text: PRACTICE } as const] : []),
      ...labels.map(
        ({ name, lines }): Section => ({ kind: 'list', heading: `Label: ${name}`, items: lines }),
      ),
      ...listOf('Taken for granted', [
        ...(occasion.game ? [sayGame(occasion.game)] : []),
        ...who.assumed,
        ...(plan.isFewest ? [] : ['So many kinds of needs came together that fewer variants may be enough.']),
        ...stockNotes(plan),
      ]),
    ],
    cautions: [
      'Have the dietitian check the list of everybody who eats, and read every package in use.',
      CROSS_CONTACT,
      ...(isAllergy(needs) ? [reactionCaution(book.settings)] : []),
    ],
    next: [
      ...variants
        .filter(({ made }) => made > 0)
        .slice(0, 2)
        .map(({ made, card }) => `${made} ${card.title}`),
      ...shoppingSaid(asked),
    ].map((says) => ({ label: says, says })),
    ...(labels.length > 0
      ? {
          attachments: [
            labelFile(
              `plan-${occasion.date}`,
              labels.map(({ lines }) => lines),
            ),
          ],
        }
      : {}),
    audience: 'channel',
    data: dataOf(occasion, plan, who),
  };
}

const piecesIn = (held: readonly FromStock[]): number => held.reduce((sum, { pieces }) => sum + pieces, 0);

const stockText = (held: readonly FromStock[]): string =>
  held
    .map(
      ({ code, pieces, useBy }) =>
        `${pieces} of ${code}${useBy === undefined ? '' : `, use by ${sayDate(useBy)}`}`,
    )
    .join('; ');

/** What counts as stock, where some was taken off. */
const stockNotes = ({ variants }: ProductionPlan): string[] =>
  variants.some(({ fromStock }) => fromStock.length > 0)
    ? [
        'Stock counts where it was made from the same foods, is in date and set, and is not needed by an earlier game. Look at its labels when it is packed.',
      ]
    : [];

/** The whole sentence that shops for this plan: in a channel somebody else may press it. */
function shoppingSaid({ request }: Asked): string[] {
  const rest = /^\s*plan\s+(\S.{0,59})$/i.exec(request.text)?.[1];
  return rest === undefined ? [] : [`shopping list for ${rest.trim()}`];
}

const count = (groups: readonly Eaters[]): number => groups.reduce((sum, { people }) => sum + people, 0);

function titleOf({ date }: Occasion, plan: ProductionPlan): string {
  const lost = count([...plan.unfed, ...plan.unchecked]);
  const made = plan.variants.reduce((sum, each) => sum + each.made, 0);
  const held = plan.variants.reduce((sum, { fromStock }) => sum + piecesIn(fromStock), 0);
  const variants = `${plan.variants.length} ${plan.variants.length === 1 ? 'variant' : 'variants'}`;
  const pieces = held === 0 ? `${made} pieces` : `${made} pieces to make, ${held} from stock`;
  const rest = `${sayDate(date)}, ${plan.people - lost} of ${plan.people} people: ${variants}, ${pieces}.`;
  if (lost > 0) return `NOT FED: ${lost} of ${plan.people}. Nothing here can be planned for them. ${rest}`;
  return `${sayDate(date)}, ${plan.people} people: ${variants}, ${pieces}.`;
}

const notFed = ({ unfed, unchecked }: ProductionPlan): Section[] =>
  listOf('NOT FED: ask the dietitian what they get', [
    ...unfed.map((each) => `${eatersText(each)}: no recipe here, with or without swaps, lists none of it.`),
    ...unchecked.map((each) => `${eatersText(each)}: a food nobody here knows, so nothing could be checked.`),
  ]);

function lateness({ request, kitchen }: Asked, plan: ProductionPlan): string[] {
  if (plan.variants.every(({ made }) => made === 0)) return [];
  const latest = sayInstant(plan.latestStartMs, kitchen.book.settings.timeZone);
  return request.nowMs > plan.latestStartMs
    ? [`Too late to be set by packing: the work had to start by ${latest}.`]
    : [];
}

function makeTable({ variants }: ProductionPlan, names: readonly string[]): Section[] {
  if (variants.length === 0) return [];
  const held = variants.map(({ fromStock }) => piecesIn(fromStock));
  const hasStock = held.some((pieces) => pieces > 0);
  const whole = ({ recipe, slabs }: PlannedVariant) =>
    slabs === 0
      ? 'from stock'
      : `${slabs} ${recipe.pan ? (slabs === 1 ? 'slab' : 'slabs') : slabs === 1 ? 'batch' : 'batches'} of ${recipe.yieldPieces}`;
  return [
    {
      kind: 'table',
      heading: 'Make, in this order',
      columns: [
        { name: 'What', align: 'left' },
        { name: 'People', align: 'right' },
        { name: 'Pieces + spare', align: 'right' },
        ...(hasStock ? [{ name: 'In stock', align: 'right' } as const] : []),
        { name: 'Make', align: 'right' },
        { name: 'As', align: 'left' },
        { name: 'Mixes', align: 'right' },
      ],
      rows: variants.map((each, at) => [
        names[at] ?? '',
        String(each.people),
        `${each.needed} + ${each.wanted - each.needed}`,
        ...(hasStock ? [String(held[at] ?? 0)] : []),
        String(each.made),
        whole(each),
        String(each.work?.scaled.mixes.count ?? 0),
      ]),
    },
  ];
}

const listOf = (heading: string, items: readonly string[]): Section[] =>
  items.length > 0 ? [{ kind: 'list', heading, items }] : [];
