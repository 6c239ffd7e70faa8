import type { Batch, Holding } from '../../kitchen/stock/ledger.ts';
import { sayNews } from '../../kitchen/stock/say-holds.ts';
import { sayDate } from '../../kitchen/time/zone.ts';
import type { AllergenMark } from '../../nutrition/allergens.ts';
import type { Attachment } from '../answer.ts';
import type { Asked } from '../command.ts';
import { allergenName } from '../need-words.ts';

/** Allergens whose species the US label law wants named (FD&C Act 403(w)). */
const BY_SPECIES: ReadonlySet<string> = new Set(['tree_nut', 'fish', 'shellfish']);

/** "milk, tree nuts (almond)". */
function namesOf(marks: readonly AllergenMark[]): string {
  const allergens = [...new Set(marks.map(({ allergen }) => allergen))];
  return allergens
    .map((allergen) => {
      const species = marks.flatMap((mark) => (mark.allergen === allergen ? (mark.species ?? []) : []));
      const named = BY_SPECIES.has(allergen)
        ? ` (${[...new Set(species)].join(', ') || 'kind not named'})`
        : '';
      return `${allergenName(allergen)}${named}`;
    })
    .join(', ');
}

/** What goes on the container: name, made, use by, contains, keep cold. One line each, to copy. */
export function batchLabel(asked: Asked, batch: Batch, holding: Holding | undefined): string[] {
  const { keepCold } = batch.facts;
  return [
    `${batch.recipeTitle}${batch.variant === undefined ? '' : `, ${batch.variant}`}`,
    `Batch ${batch.code} · made ${sayDate(batch.madeDate)}`,
    useByLine(holding),
    ...contentLines(batch, holding),
    keepLine(keepCold, holding),
    asked.kitchen.book.settings.name,
  ];
}

/** What a batch contains, may contain, and what nobody knows: by its recipe and labels when it was made. */
export function contentLines({ facts }: Batch, holding?: Holding): string[] {
  const { contains, advisory, notKnown, verdicts } = facts;
  const inIt = new Set(contains.map(({ allergen }) => allergen));
  const may = advisory.filter(({ allergen }) => !inIt.has(allergen));
  return [
    `Contains: ${inIt.size > 0 ? namesOf(contains) : 'none of the listed allergens, by its ingredients'}`,
    ...(may.length > 0 ? [`May contain: ${namesOf(may)}`] : []),
    ...(notKnown.length > 0
      ? [`Not known until a label is read: ${notKnown.map(allergenName).join(', ')}`]
      : []),
    ...(holding?.labelNews ?? []).map((news) => `CHECK: ${sayNews(news)}`),
    ...(holding?.holds ? ['HELD: serve none until staff decide'] : []),
    ...(verdicts.gluten === 'clear_by_label' ? [] : ['Not gluten-free by its labels']),
  ];
}

function useByLine(holding: Holding | undefined): string {
  if (holding?.useBy !== undefined) return `Use by ${sayDate(holding.useBy)}`;
  if (holding?.daysLeft !== undefined)
    return `Frozen ${sayDate(holding.sinceDate)}; ${holding.daysLeft} days left once thawed. Write the new date then.`;
  return 'Use by: not known, ask before serving';
}

function keepLine(keepCold: boolean, holding: Holding | undefined): string {
  if (!keepCold) return 'Keep dry and closed';
  return holding?.state === 'freezer' ? 'Keep frozen' : 'Keep cold: 41 °F (5 °C) or below';
}

/** Labels as a text file to print, an empty line between two. */
export const labelFile = (code: string, labels: readonly (readonly string[])[]): Attachment => ({
  fileName: `label-${code}.txt`,
  mediaType: 'text/plain',
  content: `${labels.map((lines) => lines.join('\n')).join('\n\n')}\n`,
});
