import type { PlannedVariant, ProductionPlan } from '../../../kitchen/production/production-plan.ts';
import { CLEAN_MIN } from '../../../kitchen/production/timeline.ts';
import { sayInstant } from '../../../kitchen/time/zone.ts';
import type { Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import type { Occasion } from './occasion.ts';

/** The order of work, one step a line, back from when it is packed. */
export function workSteps(
  asked: Asked,
  occasion: Occasion,
  plan: ProductionPlan,
  names: readonly string[],
): Section[] {
  const { timeZone } = asked.kitchen.book.settings;
  const at = (ms: number) => sayInstant(ms, timeZone);
  if (plan.variants.length === 0) return [];
  const made = plan.variants.flatMap((each, place) =>
    each.work ? [{ each, name: names[place] ?? '' }] : [],
  );
  const steps = made.flatMap(({ each, name }, place) => stepsOf(each, name, place === 0, at));
  const pack = `${at(occasion.packAtMs)}: pack (${occasion.packReason}). Needs in their own closed, labeled bags.`;
  return [
    { kind: 'steps', heading: 'Order of work', items: [...steps, pack] },
    ...(made.length > 0
      ? [
          {
            kind: 'text',
            text: `Start by ${at(plan.latestStartMs)} at the latest. ${roomText(plan)}`,
          } as const,
        ]
      : []),
  ];
}

function stepsOf(
  { recipe, work }: PlannedVariant,
  name: string,
  isFirst: boolean,
  at: (ms: number) => string,
): string[] {
  if (!work) return [];
  const mixes = work.scaled.mixes.count === 1 ? 'one mix' : `${work.scaled.mixes.count} mixes`;
  const waits = work.waitedForRoom ? ' It waits for room in the refrigerator.' : '';
  return [
    isFirst
      ? `${at(work.startMs)}: bench, bowls and tools washed, rinsed and sanitized; tools and labels set apart for ${name}.`
      : `${at(work.startMs - CLEAN_MIN * 60_000)}: full clean (${CLEAN_MIN} min), other tools, other labels.`,
    `${at(work.startMs)}: ${name}, ${mixes}; wrapped or covered and labeled before the next.`,
    ...(recipe.set
      ? [
          `${at(work.setMs)}: set at the earliest (${recipe.set.leastMin} min, ${recipe.set.betterMin} is better); cut, wrap, label.${waits}`,
        ]
      : []),
  ];
}

function roomText({ room, timeline }: ProductionPlan): string {
  if (room === undefined)
    return 'How many pans the refrigerators take is not set ("pans" in kitchen.yaml), so room was not checked.';
  const tooFew = timeline.mostPans > room ? ' One mix alone needs more room than there is.' : '';
  return `Refrigerators: ${timeline.mostPans} pans at once, ${room} find room.${tooFew}`;
}
