import { type Waste, wasteBetween } from '../../../kitchen/pantry/waste.ts';
import type { Desk } from '../../../kitchen/stock/desk.ts';
import { type RecipeWeek, summarizeWeek, type WeekSummary } from '../../../kitchen/stock/week.ts';
import {
  addDays,
  type CalendarDate,
  clockTime,
  dateOf,
  instantOf,
  sayDate,
  weekdayOf,
} from '../../../kitchen/time/zone.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { atLeast } from '../../money.ts';
import { openedSections } from '../../pantry/waste-lines.ts';
import { KITCHEN_ROLES } from '../../roles.ts';
import { clockText } from '../../stock/words.ts';

/** "week summary": Monday to now, or the whole week before when "last week" is said. */
export async function weekAnswer(asked: Asked, desk: Desk): Promise<Answer> {
  const { timeZone } = desk.book.settings;
  const today = dateOf(desk.nowMs, timeZone);
  const monday = addDays(today, 1 - weekdayOf(today));
  const isLast = asked.slots.when === 'last week';
  const from = isLast ? addDays(monday, -7) : monday;
  const startOf = (date: CalendarDate) => instantOf({ date, time: clockTime('00:00') }, timeZone);
  const toMs = isLast ? startOf(monday) : desk.nowMs + 1;
  const week = await summarizeWeek(desk.ledger, desk.book, startOf(from), toMs);
  const answer = answerOf(asked, week, from, isLast ? addDays(monday, -1) : today);
  if (!KITCHEN_ROLES.includes(asked.request.asker.role)) return answer;
  return withWaste(answer, await wasteBetween(desk.ledger, desk.book, startOf(from), toMs, desk.nowMs));
}

/** What the waste of the week cost, and what is about to be waste; money is the kitchen's. */
function withWaste(answer: Answer, waste: Waste): Answer {
  const { tossed, tossedCents, pastDateCents, endsSoonCents } = waste;
  const cost = atLeast(
    tossedCents,
    tossed.flatMap(({ unpriced }) => unpriced),
  );
  const text = tossed.length > 0 ? `Waste cost ${cost}, at today's prices of what went in.` : undefined;
  return {
    ...answer,
    sections: [
      ...answer.sections,
      ...(text === undefined ? [] : [{ kind: 'text' as const, text }]),
      ...openedSections(waste),
    ],
    data: { ...answer.data, tossedCents, pastDateCents, endsSoonCents },
  };
}

const total = (recipes: readonly RecipeWeek[], pick: (recipe: RecipeWeek) => number): number =>
  recipes.reduce((sum, recipe) => sum + pick(recipe), 0);

function answerOf(asked: Asked, week: WeekSummary, from: CalendarDate, to: CalendarDate): Answer {
  const { recipes, wasteByReason, missed, readings } = week;
  const figures = (['made', 'served', 'tossed'] as const).map((name) => ({
    name,
    pieces: total(recipes, (r) => r[name]),
  }));
  const words = { made: 'made', served: 'served', tossed: 'wasted' };
  const ranOut = recipes.filter((recipe) => recipe.ranOutMs !== undefined);
  return {
    title: `${figures.map(({ name, pieces }) => `${pieces} ${words[name]}`).join(', ')}: ${sayDate(from)} to ${sayDate(to)}.`,
    sections: [
      ...(recipes.length > 0
        ? [
            {
              kind: 'table' as const,
              columns: ['Recipe', 'Made', 'Served', 'Wasted', 'Left'].map((name, i) => ({
                name,
                align: i === 0 ? ('left' as const) : ('right' as const),
              })),
              rows: recipes.map((r) => [r.title, ...[r.made, r.served, r.tossed, r.left].map(String)]),
            },
          ]
        : []),
      {
        kind: 'list',
        items: [
          `Ran out: ${ranOut.map((r) => `${r.title.toLowerCase()} (${clockText(asked, r.ranOutMs ?? 0)})`).join(', ') || 'nothing'}`,
          `Wasted for: ${[...wasteByReason].map(([reason, pieces]) => `${reason} ${pieces}`).join(', ') || 'nothing'}`,
          ...(total(recipes, (r) => Math.abs(r.counted)) > 0
            ? [
                `Put right by counting: ${recipes
                  .filter((r) => r.counted !== 0)
                  .map((r) => `${r.title.toLowerCase()} ${r.counted > 0 ? '+' : ''}${r.counted}`)
                  .join(', ')}`,
              ]
            : []),
          `Readings: ${readings} logged, ${missed.length} missed`,
        ],
      },
    ],
    cautions: [],
    next: ['temperature log', 'stock'].map((says) => ({ label: says, says })),
    audience: 'channel',
    data: {
      from,
      to,
      recipes: recipes.map((recipe) => ({ ...recipe })),
      wasteByReason: Object.fromEntries(wasteByReason),
      readings,
      readingsMissed: missed.length,
    },
  };
}
