import type { Food } from '../../../nutrition/food.ts';

/** Where the figures come from, in one line: "USDA SR28 (4 foods), package label (Kitchen whey, vanilla)". */
export function sourcesLine(foods: Iterable<Food>): string {
  const each = [...new Set(foods)];
  const of = (kind: Food['source']['kind']) => each.filter((food) => food.source.kind === kind);
  const parts = [
    countWords('USDA SR28', of('usda_sr28')),
    namedWords('package label', of('label')),
    namedWords('estimate', of('estimate')),
  ].filter((part) => part !== undefined);
  return `Figures: ${parts.join(', ')}.`;
}

const countWords = (source: string, foods: readonly Food[]): string | undefined => {
  if (foods.length === 0) return undefined;
  return foods.length === 1 ? `${source} (${foods[0]?.name})` : `${source} (${foods.length} foods)`;
};

const namedWords = (source: string, foods: readonly Food[]): string | undefined =>
  foods.length === 0 ? undefined : `${source} (${foods.map((food) => food.name).join(', ')})`;

/** For machines: each food with where its figures are from. */
export const sourceData = (foods: Iterable<Food>): { foodId: string; source: string; ndbNo?: string }[] =>
  [...new Set(foods)].map(({ id, source }) => ({
    foodId: id,
    source: source.kind,
    ...(source.kind === 'usda_sr28' && { ndbNo: source.ndbNo }),
  }));
