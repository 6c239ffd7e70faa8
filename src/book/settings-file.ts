import { z } from 'zod';
import type { KitchenSettings } from '../nutrition/book.ts';
import type { Complaint } from './place.ts';

/** The Food Code's ceiling for ready-to-eat food held at 41 °F or colder, day made included (3-501.17, 2022). */
const FOOD_CODE_DAYS = 7;

const clockTime = z
  .string('A time should be text like "06:30".')
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'A time should be HH:MM, like "06:30".');

const inches = z.number('Inches should be a number.').positive('Inches should be more than 0.').max(60);

const panSchema = z.object({
  id: z.string(),
  name: z.string().min(1),
  length: inches,
  width: inches,
  depth: inches,
});

const locationSchema = z.object({
  id: z.string().min(1),
  name: z.string().min(1),
  kind: z.enum(['fridge', 'freezer', 'room'], 'A place is a fridge, a freezer or a room.'),
  pans: z.int('Pans should be a whole number.').min(1).max(200).optional(),
});

const settingsSchema = z.object({
  name: z.string().trim().min(1).optional(),
  time_zone: z.string().refine(isTimeZone, 'This is not a time zone.').optional(),
  allergen_list: z.enum(['us', 'eu'], 'The allergen list is us or eu.').optional(),
  calories_for_athletes: z.boolean('This should be true or false.').optional(),
  emergency_number: z
    .union([z.string().min(1), z.number()])
    .transform(String)
    .optional(),
  contacts: z
    .object({ dietitian: z.string(), physician: z.string(), athletic_trainer: z.string() })
    .partial()
    .optional(),
  pans: z.array(panSchema).optional(),
  locations: z.array(locationSchema).min(1, 'Name at least one place.').optional(),
  most_days: z
    .int('Days should be a whole number.')
    .min(1, 'Days should be 1 or more.')
    .max(FOOD_CODE_DAYS, 'The Food Code allows 7 days at the most, counting the day made.')
    .optional(),
  prep_time: clockTime.optional(),
  stock_check_time: clockTime.optional(),
  reading_times: z.array(clockTime).optional(),
  closed_weekdays: z.array(z.int().min(1).max(7), 'Weekdays are 1 (Monday) to 7 (Sunday).').optional(),
  spare_share: z
    .number('A share should be a number.')
    .min(0)
    .max(1, 'A share is 0 to 1; 10 % is 0.1.')
    .optional(),
  pieces_per_person: z.number().positive('Pieces should be more than 0.').optional(),
  game_recipe: z.string('A recipe id is text, like oat-bars.').trim().min(1).optional(),
  game_people: z.int('People should be a whole number.').min(1).max(2_000).optional(),
  pack_minutes: z.int('Minutes should be a whole number.').min(0).max(720).optional(),
  par: z.record(z.string(), z.int().min(0)).optional(),
  budget: z
    .strictObject(
      {
        cents: z.int('Cents should be whole.').min(0, 'Cents are not below 0.').max(1_000_000_000),
        per: z.enum(['week', 'month'], 'A budget is per week or month.'),
      },
      'A budget is cents and per.',
    )
    .optional(),
  built_in: z.enum(['add', 'replace'], '"built_in" is add or replace.').optional(),
});

export type WrittenSettings = z.infer<typeof settingsSchema>;

const HINTS: Readonly<Record<string, string>> = {
  time_zone: 'Write an IANA zone, like America/Chicago.',
  emergency_number: 'Write the number people call, like 911.',
  pans: 'Write {id: 9x13, name: 9x13 pan, length: 13, width: 9, depth: 2} in inches, measured inside.',
  locations:
    'Write {id: fridge_a, name: Fridge A, kind: fridge, pans: 6}; pans are those that set in it at once.',
  most_days: 'Write 1 to 7.',
  closed_weekdays: 'Write [7] for Sunday.',
  game_recipe: 'Write the id of a recipe: game_recipe: oat-bars',
  game_people: 'Write how many people are fed at a game: game_people: 44',
  pack_minutes: 'Write the minutes between packing and leaving, 0 to 720: pack_minutes: 60',
  par: 'Write recipe ids with pieces: {oat-bars: 24}.',
  budget: 'Write whole cents and week or month: budget: {cents: 40000, per: week}',
  built_in: 'Write add to cook beside the recipes that come along, replace to cook without them.',
};

/** What a kitchen that says nothing of itself gets. Contacts are roles, never names. */
export const DEFAULT_SETTINGS: KitchenSettings = {
  name: 'The kitchen',
  timeZone: 'America/Chicago',
  allergenList: 'us',
  caloriesForAthletes: false,
  emergencyNumber: '911',
  contacts: {
    dietitian: 'the sports dietitian',
    physician: 'the team physician',
    athleticTrainer: 'the athletic trainer',
  },
  pans: [],
  locations: [
    { id: 'fridge', name: 'Fridge', kind: 'fridge' },
    { id: 'freezer', name: 'Freezer', kind: 'freezer' },
    { id: 'shelf', name: 'Dry shelf', kind: 'room' },
  ],
  mostDays: FOOD_CODE_DAYS,
  prepTime: '09:00',
  stockCheckTime: '07:00',
  readingTimes: ['07:00', '15:00'],
  closedWeekdays: [7],
  spareShare: 0.1,
  piecesPerPerson: 1,
  par: new Map(),
};

/** Checks kitchen.yaml. A wrong setting is complained of and left as it was; the others count. */
export function readSettings(value: unknown): { written: WrittenSettings; complaints: Complaint[] } {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return {
      written: {},
      complaints: [
        { path: [], message: 'kitchen.yaml should hold settings.', hint: 'Write name: My kitchen' },
      ],
    };
  }
  const complaints: Complaint[] = [];
  const right: Record<string, unknown> = {};
  for (const [key, field] of Object.entries(value)) {
    const schema = settingsSchema.shape[key as keyof typeof settingsSchema.shape];
    if (!schema || !Object.hasOwn(settingsSchema.shape, key)) {
      complaints.push({
        path: [key],
        message: `"${key}" is not a setting.`,
        hint: `Settings are ${Object.keys(settingsSchema.shape).join(', ')}.`,
      });
      continue;
    }
    const read = schema.safeParse(field);
    if (read.success) right[key] = read.data;
    else {
      const issue = read.error.issues[0];
      complaints.push({
        path: [key, ...((issue?.path ?? []) as (string | number)[])],
        message: issue?.message ?? 'This setting cannot be read.',
        hint: HINTS[key] ?? 'See the settings of the demo kitchen for an example.',
      });
    }
  }
  return { written: right as WrittenSettings, complaints };
}

/** `base` with what a kitchen wrote put over it; par levels and pans are added one by one. */
export function withSettings(base: KitchenSettings, written: WrittenSettings): KitchenSettings {
  const { contacts, pans, locations } = written;
  return {
    name: written.name ?? base.name,
    timeZone: written.time_zone ?? base.timeZone,
    allergenList: written.allergen_list ?? base.allergenList,
    caloriesForAthletes: written.calories_for_athletes ?? base.caloriesForAthletes,
    emergencyNumber: written.emergency_number ?? base.emergencyNumber,
    contacts: {
      dietitian: contacts?.dietitian ?? base.contacts.dietitian,
      physician: contacts?.physician ?? base.contacts.physician,
      athleticTrainer: contacts?.athletic_trainer ?? base.contacts.athleticTrainer,
    },
    pans: mergePans(base.pans, pans ?? []),
    locations: locations ? locations.map(placeOf) : base.locations,
    mostDays: written.most_days ?? base.mostDays,
    prepTime: written.prep_time ?? base.prepTime,
    stockCheckTime: written.stock_check_time ?? base.stockCheckTime,
    readingTimes: written.reading_times ?? base.readingTimes,
    closedWeekdays: written.closed_weekdays ?? base.closedWeekdays,
    spareShare: written.spare_share ?? base.spareShare,
    piecesPerPerson: written.pieces_per_person ?? base.piecesPerPerson,
    ...gameSettings(base, written),
    par: new Map([...base.par, ...Object.entries(written.par ?? {})]),
    ...budgetOf(base, written),
  };
}

const placeOf = ({ pans, ...place }: z.infer<typeof locationSchema>): KitchenSettings['locations'][number] =>
  pans === undefined ? place : { ...place, pans };

function budgetOf(base: KitchenSettings, written: WrittenSettings): Pick<KitchenSettings, 'budget'> {
  const budget = written.budget ?? base.budget;
  return budget === undefined ? {} : { budget };
}

function gameSettings(base: KitchenSettings, written: WrittenSettings): Partial<KitchenSettings> {
  const gameRecipe = written.game_recipe ?? base.gameRecipe;
  const gamePeople = written.game_people ?? base.gamePeople;
  const packMin = written.pack_minutes ?? base.packMin;
  return {
    ...(gameRecipe === undefined ? {} : { gameRecipe }),
    ...(gamePeople === undefined ? {} : { gamePeople }),
    ...(packMin === undefined ? {} : { packMin }),
  };
}

function mergePans(
  base: KitchenSettings['pans'],
  written: readonly z.infer<typeof panSchema>[],
): KitchenSettings['pans'] {
  const merged = new Map(base.map((pan) => [pan.id, pan]));
  for (const { id, name, length, width, depth } of written) {
    merged.set(id, { id, name, lengthIn: length, widthIn: width, depthIn: depth });
  }
  return [...merged.values()];
}

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
