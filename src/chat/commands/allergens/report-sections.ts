import type { Need } from '../../../nutrition/allergens.ts';
import type {
  AllergenFinding,
  AllergenReport,
  Through,
  UnlistedConcern,
} from '../../../nutrition/allergens-of.ts';
import type { Section } from '../../answer.ts';
import { AVENIN_NOTE, allergenName, CROSS_CONTACT, listed } from '../../need-words.ts';

/** "almond butter (almond)". */
export const throughText = (found: readonly Through[]): string =>
  listed(
    [...new Set(found.map((t) => (t.species && !sameWord(t) ? `${t.foodName} (${t.species})` : t.foodName)))],
    'and',
  );

const sameWord = (t: Through): boolean => t.foodName.toLowerCase().includes((t.species ?? '').toLowerCase());

/**
 * The report as sections: what it contains, what a label advises, what is not known, then grains and diets; with
 * needs, only the grains and diets they are about.
 */
export function reportSections(report: AllergenReport, needs: readonly Need[] = []): Section[] {
  const by = (status: AllergenFinding['status']) => report.findings.filter((f) => f.status === status);
  const rows = [
    ...rowsOf(by('contains'), 'contains', (f) => throughText(f.contains)),
    ...rowsOf(by('advisory'), 'may contain', (f) => throughText(f.advisory)),
    ...rowsOf(by('not_known'), 'not known', (f) => `read: ${throughText(f.unread)}`),
  ];
  const sections: Section[] = [];
  if (rows.length > 0)
    sections.push({
      kind: 'table',
      columns: [
        { name: 'Allergen', align: 'left' },
        { name: 'Status', align: 'left' },
        { name: 'Through', align: 'left' },
      ],
      rows,
    });
  const unlisted = by('not_listed').map((f) => allergenName(f.allergen));
  if (unlisted.length > 0)
    sections.push({ kind: 'text', text: `Not listed on its ingredients: ${listed(unlisted)}.` });
  const items = [...dietLines(report, needs), ...askLines(report)];
  return items.length > 0 ? [...sections, { kind: 'list', items }] : sections;
}

/** Allergens that come through the same foods share a row: five rows that say "read: Hummus" say it once. */
function rowsOf(
  findings: readonly AllergenFinding[],
  status: string,
  through: (finding: AllergenFinding) => string,
): string[][] {
  const byFoods = new Map<string, string[]>();
  for (const finding of findings) {
    const foods = through(finding);
    byFoods.set(foods, [...(byFoods.get(foods) ?? []), allergenName(finding.allergen)]);
  }
  return [...byFoods].map(([foods, allergens]) => [listed(allergens), status, foods]);
}

export const GLUTEN_WORDS: Record<AllergenReport['gluten']['status'], string> = {
  contains: 'Gluten: contains',
  advisory: 'Gluten: a label advises of wheat',
  oats_not_labelled: 'Gluten: oats without a gluten-free label, not for coeliac disease',
  grain_not_labelled: 'Gluten: grain without a gluten-free label',
  not_known: 'Gluten: not known until the label is read',
  only_labelled_grains: 'Gluten: only grains labelled gluten-free',
  no_gluten_grain: 'Gluten: no gluten grain named',
};

function dietLines(report: AllergenReport, needs: readonly Need[]): string[] {
  const isAsked = (...about: readonly Need[]) => needs.length === 0 || about.some((n) => needs.includes(n));
  const { gluten, lactose, vegan, vegetarian } = report;
  const said = (words: string, found: readonly Through[]) =>
    found.length > 0 ? `${words} (${throughText(found)}).` : `${words}.`;
  const words = (status: string) => status.replace('_', ' ');
  return [
    ...(isAsked('gluten', 'wheat') ? [said(GLUTEN_WORDS[gluten.status], gluten.through)] : []),
    ...(isAsked('lactose', 'milk') ? [said(`Lactose: ${words(lactose.status)}`, lactose.through)] : []),
    ...(isAsked('animal') ? [said(`Vegan: ${words(vegan.status)}`, vegan.through)] : []),
    ...(isAsked('meat', 'pork') ? [said(`Vegetarian: ${words(vegetarian.status)}`, vegetarian.through)] : []),
  ];
}

function askLines(report: AllergenReport): string[] {
  const listName = report.list === 'us' ? 'US' : 'EU';
  return [
    ...(report.unlisted.length > 0
      ? [`Not on the ${listName} list, yet some avoid it: ${listed(report.unlisted.map(concernText))}.`]
      : []),
    ...report.refinedOils.map(
      (oil) =>
        `${oil.foodName}: no major allergen if highly refined; read the label and let the dietitian decide.`,
    ),
  ];
}

const concernText = ({ concern, through }: UnlistedConcern): string =>
  `${allergenName(concern)} (${listed(through.map((t) => t.foodName))})`;

/** Cautions every allergen answer carries, and those its own ingredients call for. */
export function reportCautions(report: AllergenReport): string[] {
  return [CROSS_CONTACT, ...(report.labelledOats.length > 0 ? [AVENIN_NOTE] : [])];
}

/** The report for machines. */
export function reportData(report: AllergenReport): Record<string, unknown> {
  const names = (status: AllergenFinding['status']) =>
    report.findings.filter((f) => f.status === status).map((f) => f.allergen);
  return {
    allergenList: report.list,
    contains: names('contains'),
    advisory: names('advisory'),
    notKnown: names('not_known'),
    notListed: names('not_listed'),
    unlisted: report.unlisted.map((u) => u.concern),
    through: Object.fromEntries(
      report.findings
        .filter((f) => f.status !== 'not_listed')
        .map((f) => [f.allergen, [...f.contains, ...f.advisory, ...f.unread].map((t) => t.foodId)]),
    ),
    gluten: report.gluten.status,
    lactose: report.lactose.status,
    vegan: report.vegan.status,
    vegetarian: report.vegetarian.status,
    labelsToRead: report.labelsToRead.map((t) => t.foodId),
    crossContact: report.crossContact,
  };
}
