import { z } from 'zod';

/** The shape of a recipe card as a kitchen writes it; every field but three may be left out. */
const text = (what: string) => z.string(`${what} should be text.`).trim().min(1, `${what} is empty.`);
const amount = (what: string) =>
  z.union([z.number(), z.string()], `${what} should be a number, like 2, 1 1/2 or 0.5.`);
const textList = (what: string) =>
  z.union([z.string(), z.array(z.union([z.string(), z.number()]))], `${what} should be a list of texts.`);

export const ingredientSchema = z.looseObject(
  {
    food: text('The food of this ingredient'),
    amount: amount('The amount').optional(),
    unit: text('The unit').optional(),
    grams: amount('Grams').optional(),
    weight: text('The weight').optional(),
    role: text('The role').optional(),
    measured: text('How it is measured').optional(),
    prep: text('The preparation').optional(),
    optional: z.boolean('"optional" should be true or false.').optional(),
    tolerance: amount('The tolerance').optional(),
  },
  'An ingredient should be a line of text or a list of its fields.',
);

const stepSchema = z.union(
  [
    z.string(),
    z.looseObject({
      text: text('The step'),
      watch: text('What to watch').optional(),
      limit: text('The limit').optional(),
      control: z.looseObject({ watch: text('What to watch'), limit: text('The limit') }).optional(),
    }),
  ],
  'A step should be text, or text with watch and limit.',
);

export const cardSchema = z.looseObject(
  {
    title: text('The title'),
    id: text('The id').optional(),
    aliases: textList('Aliases').optional(),
    kind: text('The kind').optional(),
    version: z.union([z.string(), z.number()], 'The version should be a date.').optional(),
    yield: z.union(
      [
        z.number(),
        z.string(),
        z.looseObject({ pieces: amount('Pieces'), unit: text('The unit').optional() }),
      ],
      'The yield is missing or is not a number of pieces.',
    ),
    piece: text('What one piece is').optional(),
    ingredients: z
      .union(
        [z.string().trim(), z.array(z.unknown()), z.record(z.string(), z.unknown())],
        'The ingredients are missing or are not a list.',
      )
      .refine((written) => Object.keys(written).length > 0, 'The list of ingredients is empty.'),
    method: z.union([z.string(), z.array(stepSchema)], 'The method should be a list of steps.').optional(),
    bowl: amount('The bowl').optional(),
    pan: z.union([z.string(), z.looseObject({})], 'The pan should be a name or its measures.').optional(),
    cut: z
      .union(
        [z.string(), z.looseObject({ rows: amount('Rows'), columns: amount('Columns') })],
        'The cut is not clear.',
      )
      .optional(),
    set: z
      .union([
        z.string(),
        z.number(),
        z.looseObject({ least: amount('The least time'), better: amount('The better time').optional() }),
      ])
      .optional(),
    storage: text('The storage').optional(),
    shelf_life_days: amount('The shelf life').optional(),
    wet_dry: z
      .union([z.string(), z.looseObject({ least: amount('The least'), most: amount('The most') })])
      .optional(),
    moisture_loss: amount('The moisture loss').optional(),
    handling_loss: amount('The handling loss').optional(),
    tags: textList('Tags').optional(),
    note: text('The note').optional(),
  },
  'A recipe should be fields such as title, yield and ingredients.',
);

export type Card = z.infer<typeof cardSchema>;
export type IngredientFields = z.infer<typeof ingredientSchema>;

/** What to write in each field, said whenever that field is wrong. */
export const CARD_HINTS: Readonly<Record<string, string>> = {
  title: 'Write title: Oat bars',
  id: 'Write small letters, digits and hyphens, like oat-bars.',
  aliases: 'Write aliases: [bars, oat bar]',
  version: 'Write the date of this version, like 2026-08-17.',
  yield: 'Write yield: 12 bars',
  piece: 'Write what one piece is, like "2 x 3 in, about 62 g".',
  ingredients: 'Write one ingredient a line, like "- 2 cups rolled oats" or "- 500 g greek yogurt".',
  method: 'Write one step a line; for a control point write {text: …, watch: …, limit: …}.',
  bowl: 'Write the grams of mix the bowl takes, like 3000 or 3 kg.',
  pan: 'Write a pan of kitchen.yaml, like 9x13, or {length: 13, width: 9, depth: 2} in inches.',
  cut: 'Write rows by columns, like 3 x 4.',
  set: 'Write minutes, like {least: 60, better: 120}.',
  storage: 'Write refrigerated, frozen or room.',
  shelf_life_days: 'Write days with the day made as day 1, like 5.',
  wet_dry: 'Write the range of wet over dry by weight, like 0.7-0.9.',
  moisture_loss: 'Write a share, like 0.12 or 12 %.',
  handling_loss: 'Write a share, like 0.02 or 2 %.',
  tags: 'Write tags: [no-bake, travel]',
  note: 'Write a line of text.',
};

/** Other words people use for a field. */
const SYNONYMS: Readonly<Record<string, string>> = {
  name: 'title',
  makes: 'yield',
  serves: 'yield',
  servings: 'yield',
  portions: 'yield',
  pieces: 'yield',
  yields: 'yield',
  number_of_servings: 'yield',
  number_of_portions: 'yield',
  servings_per_recipe: 'yield',
  recipe: 'title',
  recipe_name: 'title',
  portion_size: 'piece',
  serving_size: 'piece',
  piece_size: 'piece',
  procedure: 'method',
  preparation: 'method',
  also_called: 'aliases',
  alias: 'aliases',
  type: 'kind',
  date: 'version',
  ingredient: 'ingredients',
  steps: 'method',
  directions: 'method',
  instructions: 'method',
  bowl_g: 'bowl',
  bowl_capacity: 'bowl',
  set_time: 'set',
  chill: 'set',
  shelf_life: 'shelf_life_days',
  keeps: 'shelf_life_days',
  wet_to_dry: 'wet_dry',
  notes: 'note',
};

export const CARD_FIELDS: readonly string[] = Object.keys(CARD_HINTS).concat('kind');
export const INGREDIENT_FIELDS: readonly string[] = Object.keys(ingredientSchema.shape);

/** The field a written key means: "Shelf-life" is `shelf_life_days`. */
export function cardField(key: string): string {
  const plain = key
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  return SYNONYMS[plain] ?? plain;
}
