import type { Game } from '../../../kitchen/games/game.ts';
import type { Outlook } from '../../../kitchen/games/outlook.ts';
import type { PrepPlan } from '../../../kitchen/games/prep-plan.ts';
import { gameName, sayGame } from '../../../kitchen/games/say-game.ts';
import { clockTime, dateOf, instantOf, sayInstant, sayTime, zoneName } from '../../../kitchen/time/zone.ts';
import type { Section } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { opens } from '../../forms/opens.ts';
import { amountWords, prepSheets } from '../../games/plan-lines.ts';
import { type Span, spanOf } from '../../games/span.ts';
import { fits } from '../../games/which-game.ts';
import { KITCHEN_ROLES } from '../../roles.ts';
import { gameData, planData } from '../game/data.ts';

/** What is on in the days asked about: games; for the kitchen also preps, packing and checks. */
export function weekAnswer(asked: Asked, seen: Outlook): Answered {
  const span = spanOf(asked);
  const games = seen.games.filter(
    (game) => game.date >= span.from && game.date <= span.to && fits(asked, game),
  );
  const isKitchen = KITCHEN_ROLES.includes(asked.request.asker.role);
  const zone = asked.kitchen.book.settings.timeZone;
  const inSpan = (atMs: number): boolean => dateOf(atMs, zone) >= span.from && dateOf(atMs, zone) <= span.to;
  const plans = isKitchen
    ? seen.plans.filter(
        (plan) => inSpan(plan.prepAtMs) || plan.packs.some(({ packAtMs }) => inSpan(packAtMs)),
      )
    : [];
  const planned = games.filter(({ status }) => status === 'planned');
  return {
    answer: {
      title: titleOf(planned, span, seen, asked),
      sections: [
        ...listOf('Games', games.map(gameLine)),
        ...listOf(
          'Prep',
          plans
            .filter(({ prepAtMs, pieces }) => pieces > 0 && inSpan(prepAtMs))
            .map((plan) => prepItem(plan, seen, asked)),
        ),
        ...listOf(
          'Pack',
          plans.flatMap((plan) => packItems(plan, seen, asked, inSpan)),
        ),
        ...(isKitchen ? [checks(asked)] : []),
      ],
      cautions: conflictsOf(plans, seen),
      next: isKitchen
        ? [
            ...prepSheets(plans, asked).slice(0, 1),
            opens('Add a game', 'game sat 2pm vs riverton', 'game'),
            { label: 'As a calendar file', says: 'export schedule' },
            { label: 'Next week', says: 'schedule next week' },
          ]
        : [{ label: 'Next week', says: 'schedule next week' }],
      audience: 'channel',
      data: {
        from: span.from,
        to: span.to,
        time_zone: zone,
        games: games.map(gameData),
        plans: plans.map((plan) => ({ game_ids: plan.gameIds, ...planData(plan) })),
      },
    },
  };
}

function titleOf(planned: readonly Game[], span: Span, seen: Outlook, asked: Asked): string {
  if (planned.length > 0) return `${planned.length} ${planned.length === 1 ? 'game' : 'games'}, ${span.name}`;
  const next = seen.games.find(
    (game) => game.status === 'planned' && game.date > span.to && fits(asked, game),
  );
  return `No game ${span.from === span.to ? 'on' : 'from'} ${span.name}${next ? `; the next is ${sayGame(next)}` : ''}`;
}

const gameLine = (game: Game): string =>
  `${sayGame(game)}${game.missingMs === undefined ? '' : ' (no longer in its calendar: is it on?)'}`;

function nameOf(ids: readonly string[], { games }: Outlook): string {
  return ids
    .map((id) => games.find((game) => game.id === id))
    .flatMap((game) => (game ? [gameName(game)] : []))
    .join(', ');
}

function prepItem(plan: PrepPlan, seen: Outlook, { kitchen }: Asked): string {
  const at = sayInstant(plan.prepAtMs, kitchen.book.settings.timeZone);
  return `${at}: ${amountWords(plan, kitchen.book)}, ${nameOf(plan.gameIds, seen)}`;
}

function packItems(
  plan: PrepPlan,
  seen: Outlook,
  { kitchen }: Asked,
  inSpan: (ms: number) => boolean,
): string[] {
  const title = kitchen.book.recipes.get(plan.recipeId ?? '')?.title.toLowerCase() ?? 'pieces';
  return plan.packs
    .filter(({ pieces, packAtMs }) => pieces > 0 && inSpan(packAtMs))
    .map(
      ({ gameId, pieces, packAtMs }) =>
        `${sayInstant(packAtMs, kitchen.book.settings.timeZone)}: ${pieces} ${title}, ${nameOf([gameId], seen)}`,
    );
}

/** Each conflict with the game it is about. */
const conflictsOf = (plans: readonly PrepPlan[], seen: Outlook): string[] =>
  plans.flatMap((plan) => plan.conflicts.map((conflict) => `${nameOf(plan.gameIds, seen)}: ${conflict}`));

function checks({ kitchen, request }: Asked): Section {
  const { stockCheckTime, readingTimes, timeZone, closedWeekdays } = kitchen.book.settings;
  const said = (time: string): string => sayTime(clockTime(time));
  const readings = readingTimes.length > 0 ? `; fridge readings ${readingTimes.map(said).join(' and ')}` : '';
  const today = dateOf(request.nowMs, timeZone);
  const zone = zoneName(instantOf({ date: today, time: clockTime(stockCheckTime) }, timeZone), timeZone);
  const closed =
    closedWeekdays.length > 0 ? ` No prep on ${closedWeekdays.map(weekdayWord).join(', ')}.` : '';
  return {
    kind: 'text',
    text: `Every day: stock check ${said(stockCheckTime)}${readings} (${zone}).${closed}`,
  };
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const weekdayWord = (weekday: number): string => WEEKDAYS[weekday - 1] ?? '';

function listOf(heading: string, items: readonly string[]): Section[] {
  return items.length > 0 ? [{ kind: 'list', heading, items }] : [];
}
