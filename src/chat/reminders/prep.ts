import type { Game } from '../../kitchen/games/game.ts';
import type { PrepPlan } from '../../kitchen/games/prep-plan.ts';
import { gameName, sayWhen } from '../../kitchen/games/say-game.ts';
import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import { type KitchenState, plansFor } from '../../kitchen/reminders/planner.ts';
import type { Reminder } from '../../kitchen/reminders/reminder.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { scaleRecipe } from '../../nutrition/scale/scale-recipe.ts';
import type { Answer } from '../answer.ts';
import { batchAnswer } from '../commands/scale/batch-answer.ts';
import { piecesOf } from '../stock/words.ts';
import { list, type Told, text } from './frame.ts';

interface Planned {
  readonly plan: PrepPlan;
  readonly games: readonly Game[];
  readonly recipe?: Recipe;
}

/** The plan as it stands now; undefined when the game is off or stock covers it. */
function plannedFor(reminder: Reminder, state: KitchenState): Planned | undefined {
  const plan = plansFor(state).find(({ gameIds }) => gameIds.includes(String(reminder.about.gameId)));
  if (!plan) return undefined;
  const games = plan.gameIds.flatMap((id) => state.games.find((game) => game.id === id) ?? []);
  const recipe = plan.recipeId === undefined ? undefined : state.book.recipes.get(plan.recipeId);
  return { plan, games, ...(recipe ? { recipe } : {}) };
}

/** What to make, scaled, and why; the second time that nobody has it yet. */
export function prep(reminder: Reminder, { state }: ComposingDesk): Told | undefined {
  const planned = plannedFor(reminder, state);
  if (!planned) return undefined;
  const { plan, recipe } = planned;
  if (plan.wanted === undefined || !recipe) return question(planned);
  if (plan.pieces === 0) return undefined;
  const again = reminder.about.repeats !== undefined;
  const zone = state.book.settings.timeZone;
  const batch = scaledBatch(recipe, plan.pieces, state);
  return {
    title: `${again ? 'Nobody has this prep yet' : 'Prep now'}: ${countOf(plan.pieces, recipe)} for ${gamesText(planned)}.`,
    sections: [
      text(`Start by ${sayInstant(plan.latestStartMs, zone)} at the latest.`),
      ...(again ? [] : batch.sections),
      ...list(plan.conflicts, 'Mind'),
      ...(again ? [] : list(plan.reasons, 'Why')),
    ],
    cautions: again ? [] : batch.cautions,
    says: again ? [countOf(plan.pieces, recipe)] : [`made ${countOf(plan.pieces, recipe)}`],
    data: { recipe: recipe.id, pieces: plan.pieces, batch: batch.data, prepAtMs: plan.prepAtMs },
  };
}

/** To the dietitian: it was said twice and nobody took it. */
export function escalation(reminder: Reminder, { state }: ComposingDesk): Told | undefined {
  const planned = plannedFor(reminder, state);
  if (!planned || planned.plan.pieces === 0) return undefined;
  const { plan, recipe } = planned;
  const by = sayInstant(plan.latestStartMs, state.book.settings.timeZone);
  return {
    title: `Nobody has taken the prep for ${gamesText(planned)}: ${countOf(plan.pieces, recipe)}.`,
    sections: [text(`It was said twice in the kitchen. It must start by ${by} to be set for packing.`)],
    data: { pieces: plan.pieces, latestStartMs: plan.latestStartMs },
  };
}

function question(planned: Planned): Told {
  return {
    title: `No prep is planned yet for ${gamesText(planned)}.`,
    sections: list(planned.plan.conflicts),
    says: ['schedule'],
    data: { gameIds: planned.plan.gameIds },
  };
}

/** The bench answer of the whole batch; a card that cannot be scaled says so instead of stopping the reminder. */
function scaledBatch(
  recipe: Recipe,
  pieces: number,
  { book }: KitchenState,
): Pick<Answer, 'sections' | 'cautions' | 'data'> {
  try {
    const scaled = scaleRecipe(recipe, book.foods, { kind: 'pieces', pieces }, { pans: book.settings.pans });
    return batchAnswer(scaled, book, {});
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { sections: [text(`${error.message} ${error.hint}`)], cautions: [], data: {} };
  }
}

/** Cold packs and counts, an hour before leaving. */
export function pack(reminder: Reminder, { state }: ComposingDesk): Told | undefined {
  const planned = plannedFor(reminder, state);
  const game = state.games.find(({ id }) => id === reminder.about.gameId);
  const packing = planned?.plan.packs.find(({ gameId }) => gameId === reminder.about.gameId);
  if (!planned || !game || !packing || packing.pieces === 0) return undefined;
  const { recipe } = planned;
  const zone = state.book.settings.timeZone;
  const cold = recipe?.storage !== 'room';
  return {
    title: `Pack now: ${countOf(packing.pieces, recipe)} for ${gameName(game)}, ${sayWhen(game)}.`,
    sections: list([
      `Count ${packing.pieces} pieces${game.people === undefined ? '' : ` for ${game.people} people`}, spare included.`,
      ...(cold
        ? ['Cooler with frozen packs above and below; a thermometer inside: 41 °F (5 °C) or below.']
        : []),
      'Labels on: name, made, use by, contains. Bags for allergies apart and labelled.',
      ...(game.departsMs === undefined ? [] : [`Leaves ${sayInstant(game.departsMs, zone)}.`]),
    ]),
    cautions: cold
      ? ['Out of temperature control 4 h at most, then throw out; the local code may say less.']
      : [],
    says: [`took out ${countOf(packing.pieces, recipe)}`],
    data: { gameId: game.id, pieces: packing.pieces },
  };
}

const countOf = (pieces: number, recipe: Recipe | undefined): string =>
  piecesOf(pieces, { recipeTitle: recipe?.title ?? 'pieces', pieceUnit: recipe?.pieceUnit ?? 'piece' });

function gamesText({ games }: Planned): string {
  return games.map((game) => `${gameName(game)}, ${sayWhen(game)}`).join('; ') || 'a game';
}
