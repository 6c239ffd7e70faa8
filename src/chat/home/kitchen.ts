import { outlook, planOf } from '../../kitchen/games/outlook.ts';
import { sayGame } from '../../kitchen/games/say-game.ts';
import { stockView } from '../../kitchen/stock/view.ts';
import { addDays, dateOf } from '../../kitchen/time/zone.ts';
import type { Asked } from '../command.ts';
import { opens } from '../forms/opens.ts';
import { gamesDesk } from '../games/desk.ts';
import { packLine, prepLine, prepSheets } from '../games/plan-lines.ts';
import { holdingLine } from '../stock/words.ts';
import { fridgeLines } from './fridges.ts';
import type { HomePart } from './home.ts';
import { heading, lines, words } from './parts.ts';
import { toDo } from './to-do.ts';

const MOST_GAMES = 3;
const DAYS_AHEAD = 14;

/** For those who work there: what needs doing, the games and their prep, the stock, the fridges. */
export async function kitchenHome(asked: Asked): Promise<readonly HomePart[]> {
  const { kitchen, request } = asked;
  const seen = await outlook(gamesDesk(asked));
  const view = stockView(seen.holdings, kitchen.book, request.nowMs);
  const shelf = [...view.usable, ...view.held, ...view.setting];
  return [
    { kind: 'steps', steps: quickActions(asked) },
    ...(await toDo(asked, view)),
    heading('Games and their prep'),
    ...games(asked, seen),
    heading('On the shelf, first to go on top'),
    shelf.length > 0
      ? lines(shelf.map((holding) => holdingLine(asked, holding)))
      : words('Nothing that can be served. Log a batch and it stands here.'),
    ...(view.frozen.length > 0
      ? [
          lines(
            view.frozen.map((holding) => holdingLine(asked, holding)),
            'Frozen',
          ),
        ]
      : []),
    heading('Fridges and freezers'),
    lines(await fridgeLines(asked)),
  ];
}

function quickActions({ request }: Asked) {
  return [
    opens('Log a batch', 'made 40 oat bars', 'batch'),
    opens('Serve, toss, count', 'stock', 'count'),
    opens('Fridge readings', 'temperature log', 'reading'),
    opens('Add a game', 'schedule', 'game'),
    ...(request.asker.role === 'staff' ? [opens('Settings', 'settings', 'settings')] : []),
  ];
}

function games(asked: Asked, seen: Awaited<ReturnType<typeof outlook>>): HomePart[] {
  const { book } = asked.kitchen;
  const today = dateOf(asked.request.nowMs, book.settings.timeZone);
  const next = seen.games
    .filter(({ status, date }) => status === 'planned' && date >= today && date <= addDays(today, DAYS_AHEAD))
    .slice(0, MOST_GAMES);
  if (next.length === 0) return [words(`No game in the next ${DAYS_AHEAD} days.`)];
  const sheets = prepSheets([...new Set(next.flatMap(({ id }) => planOf(seen.plans, id) ?? []))], asked);
  const parts = next.map((game) => {
    const plan = planOf(seen.plans, game.id);
    const pack = plan && packLine(plan, game.id, book);
    return lines(
      [
        ...(plan ? [prepLine(plan, book)] : ['Nothing to prep is planned.']),
        ...(pack === undefined ? [] : [pack]),
        ...(plan?.conflicts ?? []),
      ],
      sayGame(game),
    );
  });
  return [...parts, ...(sheets.length > 0 ? [{ kind: 'steps' as const, steps: sheets }] : [])];
}
