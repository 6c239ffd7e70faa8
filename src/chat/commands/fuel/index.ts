import { type FuelPhase, type FuelRange, fuelRanges } from '../../../nutrition/fuel.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import type { ConversationState } from '../../conversation.ts';
import { CROSS_CONTACT, isAllergy, listed, needName, needsOf, reactionCaution } from '../../need-words.ts';
import { slotNumber } from '../../slot-number.ts';
import { figure } from '../macros/figure-words.ts';
import { avoidedFoods, forWhom, toldFor } from '../roster/whose.ts';
import { piecesText } from '../scale/batch-words.ts';
import { fuelHead } from './head.ts';
import { type Snack, snacksFor } from './snacks.ts';

/**
 * General ranges from published position stands, and what here goes towards them. Only the asker sees it; body mass
 * is used for this one answer and kept nowhere.
 */
export const fuel: Command = {
  ...fuelHead,
  async answers(said): Promise<Answered> {
    const whom = await forWhom(said, said.request.asker.role === 'athlete');
    return toldFor(await fuelAnswer(whom.asked), whom, said);
  },
};

async function fuelAnswer(asked: Asked): Promise<Answered> {
  const needs = needsOf(asked.slots.avoid);
  const foods = avoidedFoods(asked.slots);
  const avoided = listed([...needs.map(needName), ...foods], 'or');
  const phase = phaseOf(asked);
  const ranges = fuelRanges({ phase, ...numbersOf(asked) });
  const { of, leastG } = aimOf(phase, ranges);
  const snacks = phase === 'all_day' ? [] : await snacksFor(asked, of, leastG, { needs, foods });
  const { settings } = asked.kitchen.book;
  const { dietitian } = settings.contacts;
  return {
    answer: {
      title: titleOf(phase, ranges),
      sections: [
        { kind: 'list', heading: 'Published ranges, in general', items: ranges.map(rangeLine) },
        ...(snacks.length > 0
          ? [{ kind: 'list', heading: snackHeading(snacks, avoided), items: snacks.map(snackLine) } as const]
          : phase === 'all_day'
            ? []
            : [{ kind: 'text', text: noSnack(avoided) } as const]),
        ...nearStart(asked, phase),
        {
          kind: 'text',
          text: 'A snack is a carbohydrate source, a protein source and color (common practice). Pick what you know sits well with you.',
        },
      ],
      cautions: [
        `General ranges for adult athletes, not a plan for you: ${dietitian} sets yours.`,
        ...(avoided !== ''
          ? [CROSS_CONTACT]
          : ['Allergies not stated are not checked here: say what to avoid.']),
        ...(isAllergy(needs) || foods.length > 0 ? [reactionCaution(settings)] : []),
      ],
      next: snacks.slice(0, 2).map(({ recipe }) => ({
        label: `Allergens in ${recipe.title}`,
        says: `allergens in ${recipe.title}`,
      })),
      audience: 'asker',
      data: {
        phase,
        ranges: ranges.map(({ row, amount }) => ({ ...row, ...(amount ? { amount } : {}) })),
        snacks: snacks.map(({ recipe, ...snack }) => ({ recipe: recipe.id, ...snack })),
      },
    },
    conversation: withoutBody(asked),
  };
}

const PHASES: readonly FuelPhase[] = ['pre', 'during', 'post', 'between', 'all_day', 'travel'];

/** As said; a time still to come is before, and otherwise most people ask about after. */
function phaseOf({ slots }: Asked): FuelPhase {
  const said = PHASES.find((phase) => phase === slots.phase);
  return said ?? (slots.time_to_event_min === undefined && slots.event_time === undefined ? 'post' : 'pre');
}

function numbersOf({ slots }: Asked) {
  const bodyKg = slotNumber(slots, 'weight_kg');
  const lostKg = slotNumber(slots, 'lost_kg');
  const durationMin = slotNumber(slots, 'duration_min');
  const gapMin = slotNumber(slots, 'gap_min');
  return {
    ...(bodyKg === undefined ? {} : { bodyKg }),
    ...(lostKg === undefined ? {} : { lostKg }),
    ...(durationMin === undefined ? {} : { durationMin }),
    ...(gapMin === undefined ? {} : { gapMin }),
  };
}

/** What a snack is chosen for, and from which amount on; per-kg ranges nobody can work out leave a small snack. */
function aimOf(
  phase: FuelPhase,
  ranges: readonly FuelRange[],
): { of: 'protein' | 'carbohydrate'; leastG: number } {
  const of = phase === 'post' || phase === 'travel' ? 'protein' : 'carbohydrate';
  const first = ranges.find(({ row, amount }) => row.of === of && amount && row.per !== 'kg_day');
  return { of, leastG: first?.amount?.least ?? (of === 'protein' ? 15 : 30) };
}

const MOMENTS: Record<FuelPhase, string> = {
  pre: 'before training',
  during: 'during training',
  post: 'after training',
  between: 'between sessions',
  all_day: 'over the day',
  travel: 'on the road',
};

function titleOf(phase: FuelPhase, ranges: readonly FuelRange[]): string {
  const first =
    ranges.find(({ row, amount }) => amount && row.per === 'kg_lost') ??
    ranges.find(({ amount }) => amount) ??
    ranges[0];
  return first ? `${amountText(first)} ${MOMENTS[phase]}: a general range.` : `Eating ${MOMENTS[phase]}.`;
}

const PER: Record<FuelRange['row']['per'], string> = {
  kg: 'per kg of body mass',
  kg_hour: 'per kg of body mass an hour',
  kg_day: 'per kg of body mass a day',
  hour: 'an hour',
  occasion: '',
  kg_lost: 'per kg lost',
};
const WORKED: Partial<Record<FuelRange['row']['per'], string>> = {
  kg_hour: 'an hour',
  kg_day: 'a day',
  hour: 'an hour',
};

/** "18 to 21 g protein"; per kg while no body mass is known. */
function amountText({ row, amount }: FuelRange): string {
  const { least, most } = amount ?? row;
  const unit = row.of === 'fluid' ? 'L' : 'g';
  const per = amount ? (WORKED[row.per] ?? '') : PER[row.per];
  const number = (value: number) =>
    amount && unit === 'g' ? figure(value, 'g') : String(Number(value.toFixed(2)));
  const range = least === most ? number(least) : `${number(least)} to ${number(most)}`;
  return `${range} ${unit} ${row.of}${per === '' ? '' : ` ${per}`}`;
}

const rangeLine = (range: FuelRange): string =>
  `${amountText(range)}: ${range.row.when} (${range.row.source})`;

const snackHeading = (snacks: readonly Snack[], avoided: string): string =>
  `${snacks.some(({ there }) => there !== undefined) ? 'In date here now' : 'From this kitchen'}${avoided === '' ? '' : `, no ${avoided} on recipe and labels`}`;

function snackLine({ recipe, pieces, proteinG, carbohydrateG, there }: Snack): string {
  const what = `${recipe.title}, ${piecesText(pieces, recipe.pieceUnit)}`;
  const stock = there === undefined ? '' : `; ${there} there`;
  return `${what}: ${figure(proteinG, 'g')} g protein, ${figure(carbohydrateG, 'g')} g carbohydrate${stock}`;
}

const noSnack = (avoided: string): string =>
  avoided === ''
    ? 'Nothing in date here now: ask the kitchen staff what is coming.'
    : `Nothing here now lists no ${avoided} on recipe and labels: ask the kitchen staff.`;

/** The published window before exercise starts an hour out. */
function nearStart({ slots }: Asked, phase: FuelPhase) {
  const minutes = slotNumber(slots, 'time_to_event_min');
  if (phase !== 'pre' || minutes === undefined || minutes >= 60) return [];
  const text =
    'Less than an hour to go: the published range is for 1 to 4 h before. Keep it small and familiar (common practice, no source).';
  return [{ kind: 'text', text } as const];
}

/** The conversation goes on without body mass: it is never kept. */
function withoutBody({ slots, conversation }: Asked): ConversationState {
  const { weight_kg: _body, lost_kg: _lost, ...said } = slots;
  return { ...conversation, last: { intent: 'fuel', slots: said } };
}
