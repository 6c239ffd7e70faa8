import type { Game } from '../../../kitchen/games/game.ts';
import { prepPlans } from '../../../kitchen/games/prep-plan.ts';
import { labelStandings } from '../../../kitchen/pantry/book-as-told.ts';
import type { ProductionQuestion } from '../../../kitchen/production/question.ts';
import type { Holding } from '../../../kitchen/stock/ledger.ts';
import { addDays, dateOf } from '../../../kitchen/time/zone.ts';
import type { Asked } from '../../command.ts';
import { ifKept } from '../../if-kept.ts';
import type { Occasion } from './occasion.ts';

/** How long what was made here stays familiar, in days. */
const LATELY_DAYS = 60;

/** What the kitchen's memory brings to a plan: what is held, what games before it take of that, labels to be read. */
export async function kept(
  { kitchen, request }: Asked,
  occasion: Occasion,
  games: readonly Game[],
): Promise<Pick<ProductionQuestion, 'holdings' | 'promised' | 'openLabels' | 'madeLately'>> {
  const { book } = kitchen;
  const { nowMs, asker } = request;
  const ledger = kitchen.ledgers(asker.workspace);
  const holdings = (await ifKept(() => ledger.holdings())) ?? [];
  const labels = labelStandings((await ifKept(() => ledger.labelNotes())) ?? []);
  const before = games.filter(({ id, date }) => id !== occasion.game?.id && date <= occasion.date);
  return {
    holdings,
    promised: taken(prepPlans({ games: before, holdings, book, nowMs })),
    openLabels: new Set([...labels].flatMap(([foodId, { isOpen }]) => (isOpen ? [foodId] : []))),
    madeLately: madeLately(holdings, addDays(dateOf(nowMs, book.settings.timeZone), -LATELY_DAYS)),
  };
}

function taken(plans: ReturnType<typeof prepPlans>): Map<string, number> {
  const pieces = new Map<string, number>();
  for (const { recipeId, fromStock } of plans)
    if (recipeId !== undefined) pieces.set(recipeId, (pieces.get(recipeId) ?? 0) + fromStock);
  return pieces;
}

const madeLately = (holdings: readonly Holding[], since: string): Set<string> =>
  new Set(holdings.flatMap(({ batch }) => (batch.madeDate >= since ? [batch.recipeId] : [])));
