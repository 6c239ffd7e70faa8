import { Problem } from './problem.ts';

export type FuelPhase = 'pre' | 'during' | 'post' | 'between' | 'all_day' | 'travel';

/** What an amount is counted per; `kg` rows are multiplied by body mass, `kg_lost` by mass lost in sweat. */
export type FuelPer = 'kg' | 'kg_hour' | 'kg_day' | 'hour' | 'occasion' | 'kg_lost';

/** One published range. Amounts are grams, for fluid liters. */
export interface FuelRow {
  readonly phases: readonly FuelPhase[];
  readonly of: 'carbohydrate' | 'protein' | 'fluid';
  readonly per: FuelPer;
  readonly least: number;
  readonly most: number;
  readonly when: string;
  readonly source: string;
}

const JOINT_2016 = 'ACSM, AND and DC joint position stand 2016';
const JOINT_MEMORY = `${JOINT_2016}, known from memory`;
const ISSN_PROTEIN = 'ISSN position stand, protein and exercise, 2017';
const ISSN_TIMING = 'ISSN position stand, nutrient timing, 2017, known from memory';

const row = (
  phases: readonly FuelPhase[],
  of: FuelRow['of'],
  per: FuelPer,
  [least, most]: readonly [number, number],
  when: string,
  source: string,
): FuelRow => ({ phases, of, per, least, most, when, source });

/** Ranges for healthy adult athletes in general; they prescribe nothing for anybody. */
export const FUEL_ROWS: readonly FuelRow[] = [
  row(['pre'], 'carbohydrate', 'kg', [1, 4], '1 to 4 h before exercise of over an hour', JOINT_2016),
  row(['during'], 'carbohydrate', 'hour', [30, 60], 'exercise of 1 to 2.5 h', JOINT_2016),
  row(['during'], 'carbohydrate', 'hour', [60, 90], 'exercise beyond 2.5 h, mixed sugars', JOINT_2016),
  row(['post'], 'protein', 'kg', [0.25, 0.3], 'within 2 h after', JOINT_MEMORY),
  row(['post'], 'protein', 'occasion', [15, 25], 'within 2 h after, whatever the body mass', JOINT_MEMORY),
  row(['post'], 'protein', 'kg', [0.25, 0.25], 'a serving', ISSN_PROTEIN),
  row(['post', 'travel'], 'protein', 'occasion', [20, 40], 'a serving, whatever the body mass', ISSN_PROTEIN),
  row(
    ['between'],
    'carbohydrate',
    'kg_hour',
    [1, 1.2],
    'the first 4 h, when under 8 h between sessions',
    JOINT_MEMORY,
  ),
  row(['post'], 'fluid', 'kg_lost', [1.25, 1.5], 'for each kg lost, with sodium', JOINT_MEMORY),
  row(['all_day'], 'carbohydrate', 'kg_day', [3, 5], 'a light day', JOINT_2016),
  row(['all_day'], 'carbohydrate', 'kg_day', [5, 7], 'a moderate day, about 1 h', JOINT_2016),
  row(['all_day'], 'carbohydrate', 'kg_day', [6, 10], 'a hard day, 1 to 3 h', JOINT_2016),
  row(['all_day'], 'carbohydrate', 'kg_day', [8, 12], 'a very hard day, over 4 h', JOINT_2016),
  row(['all_day'], 'protein', 'kg_day', [1.2, 2], 'spread over the day', JOINT_MEMORY),
  row(['travel'], 'protein', 'occasion', [20, 40], 'every 3 to 4 h', ISSN_TIMING),
];

/** Lightest and heaviest body these ranges are worked out for, in kg; beyond it a number was mistyped. */
const BODY_KG = { least: 30, most: 250 } as const;

export interface FuelQuestion {
  readonly phase: FuelPhase;
  /** Body mass; without it ranges stay per kg. Never kept anywhere. */
  readonly bodyKg?: number;
  /** Mass lost in sweat, for what to drink after. */
  readonly lostKg?: number;
  /** How long the exercise lasts. */
  readonly durationMin?: number;
  /** Time until the next session. */
  readonly gapMin?: number;
}

/** A published range, worked out where body mass is known: grams, or liters of fluid. */
export interface FuelRange {
  readonly row: FuelRow;
  /** Absent while the range is per kg and nobody said how many. */
  readonly amount?: { readonly least: number; readonly most: number };
}

/**
 * The published ranges for a moment around training.
 * Throws `bad_quantity` for a body mass out of reach; its message never repeats the figure.
 * @example fuelRanges({ phase: 'post', bodyKg: 70 })[0]?.amount // { least: 17.5, most: 21 }
 */
export function fuelRanges(question: FuelQuestion): FuelRange[] {
  const { phase, bodyKg, durationMin, gapMin } = question;
  if (bodyKg !== undefined && !(bodyKg >= BODY_KG.least && bodyKg <= BODY_KG.most)) {
    throw new Problem(
      'bad_quantity',
      'That body mass is out of reach of these ranges.',
      `Write it like "82 kg" or "180 lb", ${BODY_KG.least} to ${BODY_KG.most} kg; or leave it out.`,
    );
  }
  const soon = phase === 'post' && gapMin !== undefined && gapMin < 480;
  return FUEL_ROWS.filter(({ phases }) => phases.includes(phase) || (soon && phases.includes('between')))
    .filter((each) => phase !== 'during' || fitsDuration(each, durationMin))
    .map((each) => {
      const amount = fuelAmount(each, question);
      return { row: each, ...(amount ? { amount } : {}) };
    });
}

/** Two bands during exercise: up to 2.5 h, and beyond. */
const fitsDuration = ({ least }: FuelRow, durationMin: number | undefined): boolean =>
  durationMin === undefined || durationMin > 150 === least >= 60;

/** The amount of a row for a body, or for the mass it lost in sweat; absent while that mass is not known. */
export function fuelAmount(
  { per, least, most }: FuelRow,
  { bodyKg, lostKg }: Pick<FuelQuestion, 'bodyKg' | 'lostKg'>,
): { least: number; most: number } | undefined {
  if (per === 'hour' || per === 'occasion') return { least, most };
  const kg = per === 'kg_lost' ? lostKg : bodyKg;
  return kg === undefined ? undefined : { least: least * kg, most: most * kg };
}
