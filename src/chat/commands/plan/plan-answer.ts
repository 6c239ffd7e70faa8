import { sayGame } from '../../../kitchen/games/say-game.ts';
import type { Eaters } from '../../../kitchen/production/eaters.ts';
import type { PlannedVariant, ProductionPlan } from '../../../kitchen/production/production-plan.ts';
import { CLEAN_MIN } from '../../../kitchen/production/timeline.ts';
import { sayDate, sayInstant } from '../../../kitchen/time/zone.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { CROSS_CONTACT, isAllergy, reactionCaution } from '../../need-words.ts';
import { labelFile } from '../../stock/label.ts';
import { lineText } from '../swap/offer-text.ts';
import { labelOf } from './labels.ts';
import type { Occasion } from './occasion.ts';
import { eatersText, swapsText, variantNames } from './variant-words.ts';
import type { WhoEats } from './who-eats.ts';

/** What is practice and what is law about working with allergens, and what a sanitizer cannot do. */
const PRACTICE =
  'This order, the full clean between and separate tools are practice; the model Food Code does not prescribe them. Sanitizer kills germs and does not remove allergens: wash with detergent and rinse first.';

/** The plan: who is not fed first, then how much of what, who gets it, the order of work and the labels. */
export function planAnswer(asked: Asked, occasion: Occasion, who: WhoEats, plan: ProductionPlan): Answer {
  const { book } = asked.kitchen;
  const { variants } = plan;
  const names = variantNames(variants);
  const labels = variants.map((variant) => labelOf(variant, book));
  const needs = who.eaters.flatMap(({ avoid }) => avoid);
  return {
    title: titleOf(occasion, plan),
    sections: [
      ...notFed(plan),
      ...listOf('Before anything is made', [...who.warnings, ...plan.conflicts, ...lateness(asked, plan)]),
      ...makeTable(plan, names),
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
      ...labels.map((lines, at): Section => ({ kind: 'list', heading: `Label: ${names[at]}`, items: lines })),
      ...listOf('Taken for granted', [
        ...(occasion.game ? [sayGame(occasion.game)] : []),
        ...who.assumed,
        ...(plan.isFewest ? [] : ['So many kinds of needs came together that fewer variants may be enough.']),
        'What is in stock is not taken off.',
      ]),
    ],
    cautions: [
      'Have the dietitian check the list of everybody who eats, and read every package in use.',
      CROSS_CONTACT,
      ...(isAllergy(needs) ? [reactionCaution(book.settings)] : []),
    ],
    next: variants.slice(0, 2).map(({ made, card }) => {
      const says = `${made} ${card.title}`;
      return { label: says, says };
    }),
    ...(labels.length > 0 ? { attachments: [labelFile(`plan-${occasion.date}`, labels)] } : {}),
    audience: 'channel',
    data: dataOf(occasion, plan, who),
  };
}

const count = (groups: readonly Eaters[]): number => groups.reduce((sum, { people }) => sum + people, 0);

function titleOf({ date }: Occasion, plan: ProductionPlan): string {
  const lost = count([...plan.unfed, ...plan.unchecked]);
  const made = plan.variants.reduce((sum, each) => sum + each.made, 0);
  const variants = `${plan.variants.length} ${plan.variants.length === 1 ? 'variant' : 'variants'}`;
  const rest = `${sayDate(date)}, ${plan.people - lost} of ${plan.people} people: ${variants}, ${made} pieces.`;
  if (lost > 0) return `NOT FED: ${lost} of ${plan.people}. Nothing here can be planned for them. ${rest}`;
  return `${sayDate(date)}, ${plan.people} people: ${variants}, ${made} pieces.`;
}

const notFed = ({ unfed, unchecked }: ProductionPlan): Section[] =>
  listOf('NOT FED: ask the dietitian what they get', [
    ...unfed.map((each) => `${eatersText(each)}: no recipe here, with or without swaps, lists none of it.`),
    ...unchecked.map((each) => `${eatersText(each)}: a food nobody here knows, so nothing could be checked.`),
  ]);

function lateness({ request, kitchen }: Asked, plan: ProductionPlan): string[] {
  if (plan.variants.length === 0) return [];
  const latest = sayInstant(plan.latestStartMs, kitchen.book.settings.timeZone);
  return request.nowMs > plan.latestStartMs
    ? [`Too late to be set by packing: the work had to start by ${latest}.`]
    : [];
}

function makeTable({ variants }: ProductionPlan, names: readonly string[]): Section[] {
  if (variants.length === 0) return [];
  const whole = ({ recipe, slabs }: PlannedVariant) =>
    `${slabs} ${recipe.pan ? (slabs === 1 ? 'slab' : 'slabs') : slabs === 1 ? 'batch' : 'batches'} of ${recipe.yieldPieces}`;
  return [
    {
      kind: 'table',
      heading: 'Make, in this order',
      columns: [
        { name: 'What', align: 'left' },
        { name: 'People', align: 'right' },
        { name: 'Pieces + spare', align: 'right' },
        { name: 'Make', align: 'right' },
        { name: 'As', align: 'left' },
        { name: 'Mixes', align: 'right' },
      ],
      rows: variants.map((each, at) => [
        names[at] ?? '',
        String(each.people),
        `${each.needed} + ${each.wanted - each.needed}`,
        String(each.made),
        whole(each),
        String(each.scaled.mixes.count),
      ]),
    },
  ];
}

function workSteps(
  asked: Asked,
  occasion: Occasion,
  plan: ProductionPlan,
  names: readonly string[],
): Section[] {
  const { timeZone } = asked.kitchen.book.settings;
  const at = (ms: number) => sayInstant(ms, timeZone);
  if (plan.variants.length === 0) return [];
  const steps = plan.variants.flatMap((each, place) => [
    place === 0
      ? `${at(each.startMs)}: bench, bowls and tools washed, rinsed and sanitized; tools and labels set apart for ${names[place]}.`
      : `${at(each.startMs - CLEAN_MIN * 60_000)}: full clean (${CLEAN_MIN} min), other tools, other labels.`,
    `${at(each.startMs)}: ${names[place]}, ${each.scaled.mixes.count === 1 ? 'one mix' : `${each.scaled.mixes.count} mixes`}; wrapped or covered and labeled before the next.`,
    ...(each.recipe.set
      ? [
          `${at(each.setMs)}: set at the earliest (${each.recipe.set.leastMin} min, ${each.recipe.set.betterMin} is better); cut, wrap, label.${each.waitedForRoom ? ' It waits for room in the refrigerator.' : ''}`,
        ]
      : []),
  ]);
  const room =
    plan.room === undefined
      ? 'How many pans the refrigerators take is not set ("pans" in kitchen.yaml), so room was not checked.'
      : `Refrigerators: ${plan.timeline.mostPans} pans at once, ${plan.room} find room.${plan.timeline.mostPans > plan.room ? ' One mix alone needs more room than there is.' : ''}`;
  return [
    {
      kind: 'steps',
      heading: 'Order of work',
      items: [
        ...steps,
        `${at(occasion.packAtMs)}: pack (${occasion.packReason}). Needs in their own closed, labeled bags.`,
      ],
    },
    { kind: 'text', text: `Start by ${at(plan.latestStartMs)} at the latest. ${room}` },
  ];
}

function dataOf(occasion: Occasion, plan: ProductionPlan, who: WhoEats): Record<string, unknown> {
  const groups = (eaters: readonly Eaters[]) =>
    eaters.map(({ avoid, foods, people }) => ({ avoid, foods, people }));
  return {
    date: occasion.date,
    game: occasion.game?.id ?? null,
    people: plan.people,
    unfed: groups(plan.unfed),
    unchecked: groups(plan.unchecked),
    isFewest: plan.isFewest,
    variants: plan.variants.map((each) => ({
      recipe: each.card.id,
      swaps: each.swaps.map(({ from, to, massAfterG }) => ({
        from: from.id,
        to: to?.id ?? null,
        massAfterG,
      })),
      variant: swapsText(each),
      people: each.people,
      serves: groups(each.eaters),
      needed: each.needed,
      wanted: each.wanted,
      made: each.made,
      slabs: each.slabs,
      mixes: each.scaled.mixes.count,
      startMs: each.startMs,
      setMs: each.setMs,
      useBy: each.useBy ?? null,
    })),
    startMs: plan.startMs,
    latestStartMs: plan.latestStartMs,
    packAtMs: occasion.packAtMs,
    warnings: who.warnings,
    conflicts: plan.conflicts,
  };
}

const listOf = (heading: string, items: readonly string[]): Section[] =>
  items.length > 0 ? [{ kind: 'list', heading, items }] : [];
