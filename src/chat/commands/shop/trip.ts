import { sayDate } from '../../../kitchen/time/zone.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answered, Asked } from '../../command.ts';
import { todayOf } from '../../games/when.ts';
import { listed, needsOf } from '../../need-words.ts';
import type { Slots, SlotValue } from '../../slots.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { planned } from '../plan/index.ts';
import { swapsText } from '../plan/variant-words.ts';
import { type Batch, batchName, batchOf, checkKinds, type Trip } from './batches.ts';
import { gamesTrip } from './games-trip.ts';
import { suited } from './suited.ts';

/** What a request goes shopping for: named batches, a plan, the games of a day; `undefined` when it names nothing. */
export async function tripMeant(asked: Asked): Promise<Trip | Answered | undefined> {
  const { slots } = asked;
  const { parts, quantities } = slots;
  if (Array.isArray(quantities)) throw severalCounts(quantities);
  if (Array.isArray(parts) && parts.length > 0) return partsTrip(asked, parts);
  const isOfDay = slots.when !== undefined || slots.opponent !== undefined;
  const isCount = slots.quantity !== undefined && slots.unit === undefined && slots.recipe === undefined;
  if (slots.of_plan === true || Array.isArray(slots.needs) || (isOfDay && isCount)) return planTrip(asked);
  const isNamed = slots.recipe !== undefined || slots.quantity !== undefined || slots.factor !== undefined;
  if (isNamed) return recipeTrip(asked);
  if (isOfDay || slots.sport !== undefined) return gamesTrip(asked);
  return undefined;
}

const severalCounts = (counts: readonly SlotValue[]): Problem =>
  new Problem(
    'needs_more',
    `Which count: ${listed(counts.map(String), 'or')}?`,
    'Write one for each dish, like "shop for 40 oat bars and 24 peanut cocoa bites".',
  );

async function recipeTrip(asked: Asked): Promise<Trip | Answered> {
  const recipe = await recipesMeant(asked);
  if (isSeveral(recipe)) return askWhichRecipe(asked, 'shop', 'Shop for which one?', recipe);
  if (!recipe) return askWhichRecipe(asked, 'shop', 'Shop for which recipe?');
  const { card, notes } = suited(asked, recipe, asked.slots);
  const batch = batchOf(asked, card, asked.slots);
  const isSaid = asked.slots.quantity !== undefined || asked.slots.factor !== undefined;
  return {
    ...tripFor(asked, [batch]),
    notes: [
      ...notes,
      ...(isSaid ? [] : [`No number was said, so one batch of the card: ${batchName(batch)}.`]),
    ],
  };
}

async function partsTrip(asked: Asked, parts: readonly SlotValue[]): Promise<Trip | Answered> {
  checkKinds(parts.length);
  const batches: Batch[] = [];
  const notes: string[] = [];
  for (const part of parts) {
    const slots = { ...(part as Slots), ...extraOf(asked.slots), ...avoidOf(part as Slots, asked.slots) };
    const recipe = await recipesMeant({ ...asked, slots });
    if (!recipe || isSeveral(recipe))
      return askWhichRecipe(asked, 'shop', 'Shop for which one?', isSeveral(recipe) ? recipe : undefined);
    const meant = suited(asked, recipe, slots);
    batches.push(batchOf(asked, meant.card, slots));
    notes.push(...meant.notes);
  }
  return { ...tripFor(asked, batches), notes };
}

const extraOf = ({ extra_pct }: Slots): Slots => (extra_pct === undefined ? {} : { extra_pct });

/** What was said of one dish and what was said of all. */
function avoidOf(part: Slots, all: Slots): Slots {
  const needs = [...needsOf(part.avoid), ...needsOf(all.avoid)];
  return needs.length > 0 ? { avoid: [...new Set(needs)] } : {};
}

function tripFor(asked: Asked, batches: readonly Batch[]): Trip {
  const name = listed(batches.map(batchName));
  return { batches, name, lines: [], notes: [], date: todayOf(asked), says: name };
}

/** What a plan with needs makes: its variants as they are made, swaps and all. */
async function planTrip(asked: Asked): Promise<Trip> {
  const { occasion, who, made } = await planned(asked);
  const lost = [...made.unfed, ...made.unchecked].reduce((sum, { people }) => sum + people, 0);
  const toMake = made.variants.filter(({ made: pieces }) => pieces > 0);
  const held = made.variants.flatMap(({ fromStock }) => fromStock.map(({ pieces }) => pieces));
  const inStock = held.reduce((sum, pieces) => sum + pieces, 0);
  return {
    batches: toMake.map(({ recipe, made: pieces }) => ({
      recipe: recipe as Recipe,
      pieces,
      amounts: batchOf(asked, recipe, { quantity: pieces, unit: recipe.pieceUnit }).amounts,
    })),
    name: `the plan of ${sayDate(occasion.date)}, ${made.people} people`,
    lines: toMake.map((variant) => {
      const swaps = variant.swaps.length > 0 ? ` (${swapsText(variant)})` : '';
      return `${batchName({ ...variant, pieces: variant.made, amounts: [] })}${swaps} for ${variant.people} people`;
    }),
    notes: [
      ...(lost > 0 ? [`NOT FED by this plan: ${lost} people. Ask the dietitian what they get.`] : []),
      ...(asked.slots.of_plan === true
        ? ['This is for the plan just made; "list" is the list of everybody.']
        : []),
      ...who.warnings,
      ...who.assumed,
      ...(inStock > 0 ? [`${inStock} pieces come from stock; nothing is bought for them.`] : []),
    ],
    date: occasion.date,
  };
}
