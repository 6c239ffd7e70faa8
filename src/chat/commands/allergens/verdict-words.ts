import type { Need } from '../../../nutrition/allergens.ts';
import type { Because } from '../../../nutrition/conflict.ts';
import type { StillThere } from '../../../nutrition/swap/offer.ts';
import { listed, needName } from '../../need-words.ts';

const BECAUSE: Record<Because, (food: string, species: string | undefined) => string> = {
  contains: (food, species) =>
    species && !food.toLowerCase().includes(species.toLowerCase()) ? `${food} (${species})` : food,
  advisory_statement: (food) => `${food}: its label says it may contain it`,
  label_not_read: (food) => `${food}: label not read`,
  off_the_list: (food, species) => `${food}: ${species ?? 'it'} is not on the US list, ask the person`,
  may_cross_react: (food, species) => `${food}: ${species ?? 'it'} can set off the same people`,
  highly_refined_oil: (food) => `${food}: not counted if highly refined, the dietitian decides`,
  lecithin_source: (food) => `${food}: lecithin of unnamed source`,
  oats_not_labelled: (food) => `${food}: oats without a gluten-free label`,
  grain_not_labelled: (food) => `${food}: no gluten-free label`,
  low_lactose: (food) => `${food}: low in lactose, not without`,
  gelatin_source: (food) => `${food}: gelatin of unnamed source`,
  nothing_found: (food) => food,
};

/** Why one food stands against a need, in a few words. */
export const reasonText = ({ food, judgement }: StillThere): string =>
  BECAUSE[judgement.because](food.name, judgement.species);

const reasons = (found: readonly StillThere[]): string => listed([...new Set(found.map(reasonText))]);

/**
 * The one line that answers "is it free of this": gravest finding first, and never a promise.
 * @example verdictTitle('Cherry bars', ['tree_nut'], found) // 'No: Cherry bars contain tree nuts (almond butter).'
 */
export function verdictTitle(title: string, needs: readonly Need[], found: readonly StillThere[]): string {
  const grave = (verdict: string) => found.filter((f) => f.judgement.verdict === verdict);
  const names = (of: readonly StillThere[]) => listed([...new Set(of.map((f) => needName(f.need)))]);
  const conflicts = grave('conflict');
  if (conflicts.length > 0) return `No, not without ${names(conflicts)}: ${title}. ${reasons(conflicts)}.`;
  const advisory = grave('advisory');
  if (advisory.length > 0) return `Not for avoiding ${names(advisory)}: ${title}. ${reasons(advisory)}.`;
  const asking = grave('ask');
  if (asking.length > 0) return `Ask first about ${names(asking)}: ${title}. ${reasons(asking)}.`;
  return `No ${listed(needs.map(needName), 'or')} listed in ${title}, by recipe and labels; kitchen not checked.`;
}
