import { NUTRIENTS, type NutrientKey } from '../../../nutrition/nutrients.ts';
import type { PieceTotals } from '../../../nutrition/recipe-totals.ts';
import type { SwapOffer } from '../../../nutrition/swap/offer.ts';
import type { Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { dollars } from '../../money.ts';
import { shownTo } from '../../quiet-numbers.ts';

const SHOWN: readonly NutrientKey[] = ['proteinG', 'carbohydrateG', 'fatG', 'fiberG', 'sugarsG', 'sodiumMg'];

const keysFor = ({ request, kitchen }: Asked): readonly NutrientKey[] =>
  shownTo(['energyKcal', ...SHOWN], request, kitchen.book.settings);

/** Per piece now and after each offer, cost too where every ingredient has a price. */
export function compareTable(asked: Asked, offers: readonly SwapOffer[]): Section[] {
  const first = offers[0];
  if (!first) return [];
  const keys = keysFor(asked);
  const rows = keys.map((key) => [
    `${nutrient(key).name} (${nutrient(key).unit})`,
    figure(first.before, key),
    ...offers.map((offer) => figure(offer.after, key)),
  ]);
  const cost = [first.centsBefore, ...offers.map((offer) => offer.centsAfter)];
  if (cost.some((cents) => cents !== undefined))
    rows.push(['cost', ...cost.map((cents) => (cents === undefined ? 'not known' : dollars(cents)))]);
  return [
    {
      kind: 'table',
      heading: `Per ${first.recipe.pieceUnit} of ${first.recipe.yieldPieces}`,
      columns: [
        { name: '', align: 'left' },
        { name: 'now', align: 'right' },
        ...offers.map((_, i) => ({ name: `swap ${i + 1}`, align: 'right' as const })),
      ],
      rows,
    },
  ];
}

const nutrient = (key: NutrientKey): (typeof NUTRIENTS)[number] => {
  const found = NUTRIENTS.find((n) => n.key === key);
  if (!found) throw new Error(`no nutrient ${key}`);
  return found;
};

function figure(piece: PieceTotals, key: NutrientKey): string {
  const { value, atLeast } = piece.totals.of(key);
  if (value === undefined) return 'not known';
  const unit = nutrient(key).unit;
  const rounded = unit === 'g' ? value.toFixed(1) : String(Math.round(value));
  return atLeast ? `${rounded} or more` : rounded;
}

/** The same figures for machines, keys with units; energy only for those who may see it. */
export function pieceData(asked: Asked, piece: PieceTotals): Record<string, number> {
  return Object.fromEntries(
    keysFor(asked).flatMap((key) => {
      const { value } = piece.totals.of(key);
      return value === undefined ? [] : [[key, Math.round(value * 10) / 10]];
    }),
  );
}
