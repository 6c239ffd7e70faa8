import type { Need } from '../../../nutrition/allergens.ts';
import type { Because } from '../../../nutrition/conflict.ts';
import type { StillThere } from '../../../nutrition/swap/offer.ts';
import { listed, needName } from '../../need-words.ts';

/** What is to be said beside the food's name; nothing where the food simply contains it. */
const BECAUSE: Record<Because, (species: string | undefined) => string> = {
  contains: (species) => species ?? '',
  advisory_statement: () => 'label: may contain',
  label_not_read: () => 'label not read',
  off_the_list: (species) => `${species ?? 'it'} is not on the US list: ask the person`,
  may_cross_react: (species) => `${species ?? 'it'} can set off the same people`,
  highly_refined_oil: () => 'not counted if highly refined: the dietitian decides',
  lecithin_source: () => 'lecithin of unnamed source',
  oats_not_labelled: () => 'no gluten-free label',
  grain_not_labelled: () => 'no gluten-free label',
  low_lactose: () => 'low in lactose, not without',
  gelatin_source: () => 'gelatin of unnamed source',
  nothing_found: () => '',
};

/** Why one food stands against a need, in a few words: "Rolled oats (no gluten-free label)". */
export function reasonText({ food, judgement }: StillThere): string {
  const beside = BECAUSE[judgement.because](judgement.species);
  const isSaid = beside === '' || food.name.toLowerCase().includes(beside.toLowerCase());
  return isSaid ? food.name : `${food.name} (${beside})`;
}

/** Foods with the same reason share it: "Hummus and Flour tortilla (label not read)". */
export function reasonsText(found: readonly StillThere[]): string {
  const byReason = new Map<string, Set<string>>();
  for (const one of found) {
    const beside = reasonText(one).slice(one.food.name.length);
    byReason.set(beside, (byReason.get(beside) ?? new Set()).add(one.food.name));
  }
  return listed([...byReason].map(([beside, names]) => `${listed([...names])}${beside}`));
}

type Graded = 'conflict' | 'advisory' | 'ask';
const GRAVEST_FIRST: readonly Graded[] = ['conflict', 'advisory', 'ask'];

/** Needs about which the same is to be said. */
interface Finding {
  readonly verdict: Graded;
  readonly needs: readonly Need[];
  readonly found: readonly StillThere[];
  /** False where it does not hold the thing itself: oats without a gluten-free label. */
  readonly contains: boolean;
}

/**
 * The one line that answers "is it free of this": gravest finding first, each need by name, and never a promise.
 * @example verdictTitle('Cherry bars', ['tree_nut'], found) // 'Cherry bars: contains tree nuts (Almond butter).'
 */
export function verdictTitle(title: string, needs: readonly Need[], found: readonly StillThere[]): string {
  if (found.length === 0)
    return `No ${listed(needs.map(needName), 'or')} listed in ${title}, by recipe and labels; kitchen not checked.`;
  const findings = GRAVEST_FIRST.flatMap((verdict) => findingsOf(needs, found, verdict));
  const [first, ...rest] = findings.map((finding) => sentence(title, finding));
  const worst = findings[0]?.verdict;
  const lead = worst === 'ask' ? `${first}` : `${title}: ${first}`;
  const decides = worst === 'advisory' ? ['ask the dietitian before eating it'] : [];
  return `${[lead, ...rest, ...decides].map(capital).join('. ')}.`;
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** The needs whose gravest finding is this one; a graver one leaves the lesser to the table below. */
function findingsOf(
  needs: readonly Need[],
  found: readonly StillThere[],
  verdict: Graded,
): readonly Finding[] {
  const byText = new Map<string, Finding>();
  for (const need of needs) {
    const of = found.filter((f) => f.need === need);
    const gravest = GRAVEST_FIRST.find((v) => of.some((f) => f.judgement.verdict === v));
    if (gravest !== verdict) continue;
    const grave = of.filter((f) => f.judgement.verdict === verdict);
    const key = reasonsText(grave);
    const contains = grave.some((f) => f.judgement.because === 'contains');
    const alike = byText.get(key);
    byText.set(key, { verdict, needs: [...(alike?.needs ?? []), need], found: grave, contains });
  }
  return [...byText.values()];
}

function sentence(title: string, { verdict, needs, found, contains }: Finding): string {
  const isItself = found.every((f) => f.food.name === title);
  const what = listed(needs.map(needName));
  const reasons = reasonsText(found);
  if (verdict === 'ask') return `ask first about ${what}${isItself ? '' : ` in ${title}`}: ${reasons}`;
  if (verdict === 'advisory')
    return `may contain ${what} ${isItself ? 'by its label' : `(${listed([...new Set(found.map((f) => f.food.name))])})`}`;
  if (!contains) return `not for avoiding ${what}: ${reasons}`;
  const beside = isItself ? reasons.slice(title.length) : ` (${reasons})`;
  return `contains ${what}${beside}`;
}
