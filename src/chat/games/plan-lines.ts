import type { Game } from '../../kitchen/games/game.ts';
import { type Outlook, planOf } from '../../kitchen/games/outlook.ts';
import type { PrepPlan } from '../../kitchen/games/prep-plan.ts';
import { gameName } from '../../kitchen/games/say-game.ts';
import { sayInstant } from '../../kitchen/time/zone.ts';
import type { Book } from '../../nutrition/book.ts';
import type { NextStep } from '../answer.ts';
import type { Asked } from '../command.ts';

/** "48 oat bars (4 slabs)", or that stock covers it. */
export function amountWords(plan: PrepPlan, book: Book): string {
  const recipe = book.recipes.get(plan.recipeId ?? '');
  if (!recipe || plan.wanted === undefined) return 'not planned yet';
  const title = recipe.title.toLowerCase();
  if (plan.pieces === 0) return `nothing to make, ${plan.fromStock} ${title} in stock cover it`;
  const whole = recipe.pan ? (plan.slabs === 1 ? 'slab' : 'slabs') : plan.slabs === 1 ? 'batch' : 'batches';
  return `${plan.pieces} ${title} (${plan.slabs} ${whole})`;
}

/** "Prep Fri Dec 4, 9:00 am CST: 48 oat bars (4 slabs)". */
export function prepLine(plan: PrepPlan, book: Book): string {
  const amount = amountWords(plan, book);
  if (plan.pieces === 0) return `Prep: ${amount}`;
  return `Prep ${sayInstant(plan.prepAtMs, book.settings.timeZone)}: ${amount}`;
}

/** "Pack Sat Dec 5, 1:00 pm CST: 49 oat bars". */
export function packLine(plan: PrepPlan, gameId: string, book: Book): string | undefined {
  const pack = plan.packs.find((each) => each.gameId === gameId);
  if (!pack || pack.pieces === 0) return undefined;
  const title = book.recipes.get(plan.recipeId ?? '')?.title.toLowerCase() ?? 'pieces';
  return `Pack ${sayInstant(pack.packAtMs, book.settings.timeZone)}: ${pack.pieces} ${title}`;
}

/** The bench's amounts for each batch that is to be made, as a button: measures, pan, cut, set, allergens. */
export const prepSheets = (plans: readonly PrepPlan[], { kitchen }: Asked): NextStep[] =>
  plans.flatMap(({ pieces, recipeId }) => {
    const title = kitchen.book.recipes.get(recipeId ?? '')?.title.toLowerCase();
    return title !== undefined && pieces > 0
      ? [{ label: `Prep sheet: ${pieces} ${title}`, says: `${pieces} ${title}` }]
      : [];
  });

/** How a change of one game changes what is made and packed for it, and for the games that shared its batch. */
export function effectLines(asked: Asked, before: Outlook, after: Outlook, game: Game): string[] {
  const { book } = asked.kitchen;
  const was = planOf(before.plans, game.id);
  const now = planOf(after.plans, game.id);
  const lines = [...prepEffect(was, now, book), ...packEffect(was, now, game.id, book)];
  const others = new Set([...(was?.gameIds ?? []), ...(now?.gameIds ?? [])]);
  others.delete(game.id);
  for (const id of others) lines.push(...shared(id, before, after, book));
  return lines;
}

function prepEffect(was: PrepPlan | undefined, now: PrepPlan | undefined, book: Book): string[] {
  const zone = book.settings.timeZone;
  if (!now) {
    if (!was || was.pieces === 0) return [];
    return [`${prepLine(was, book)} falls away, with its reminder`];
  }
  if (!was || was.prepAtMs === now.prepAtMs || was.pieces === 0 || now.pieces === 0)
    return [prepLine(now, book)];
  return [
    `Prep moves from ${sayInstant(was.prepAtMs, zone)} to ${sayInstant(now.prepAtMs, zone)}, with its reminder: ${amountWords(now, book)}`,
  ];
}

function packEffect(
  was: PrepPlan | undefined,
  now: PrepPlan | undefined,
  gameId: string,
  book: Book,
): string[] {
  const line = now && packLine(now, gameId, book);
  const old = was && packLine(was, gameId, book);
  if (line !== undefined) return [line];
  return old === undefined ? [] : [`${old} falls away, with its reminder`];
}

/** A game that shared the batch before or shares it now: only when its own prep changed. */
function shared(id: string, before: Outlook, after: Outlook, book: Book): string[] {
  const game = after.games.find((each) => each.id === id);
  const was = planOf(before.plans, id);
  const now = planOf(after.plans, id);
  if (!game || !now || (was && was.prepAtMs === now.prepAtMs && was.pieces === now.pieces)) return [];
  return [`${gameName(game)} is touched too. ${prepLine(now, book)}`];
}
