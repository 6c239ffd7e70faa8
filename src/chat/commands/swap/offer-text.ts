import type { Food } from '../../../nutrition/food.ts';
import type { Kept } from '../../../nutrition/swap/amount.ts';
import type { LineSwap, SwapOffer } from '../../../nutrition/swap/offer.ts';
import { allergenName, listed } from '../../need-words.ts';
import { GLUTEN_WORDS } from '../allergens/report-sections.ts';
import { amountText } from './amount-text.ts';

const KEEPS: Record<Kept, string> = {
  mass: 'same weight',
  volume: 'same volume',
  water: 'same water',
  protein: 'same protein',
  sugars: 'same sugars',
  fat: 'same fat',
};

/** "1/4 cup (64 g) sunflower seed butter for 66 g peanut butter". */
export function lineText(swap: LineSwap): string {
  if (!swap.to) return `leave out the ${swap.from.name}`;
  return `${named(swap.to, swap.massAfterG)} for ${named(swap.from, swap.massBeforeG)}`;
}

/** Counted foods name themselves: "18 Flour tortillas (864 g)". */
function named(food: Food, massG: number): string {
  const amount = amountText(food, massG);
  return amount.toLowerCase().includes(food.name.toLowerCase()) ? amount : `${amount} ${food.name}`;
}

/** Why this one, in one line. */
export function reasonLine(offer: SwapOffer): string {
  const kept = [...new Set(offer.swaps.flatMap((s) => (s.keeps ? [keptText(s)] : [])))];
  const parts = [listed(kept)];
  if (offer.swaps.every((s) => s.sameForm)) parts.push('behaves the same in the mix');
  if (offer.swaps.some((s) => s.to?.product?.approvedByDietitian && s.role === 'protein'))
    parts.push('approved by the dietitian');
  return parts.filter(Boolean).join('; ');
}

const keptText = (swap: LineSwap): string =>
  swap.keeps && swap.ratio !== undefined && Math.abs(swap.ratio - 1) > 0.02
    ? `near the ${KEEPS[swap.keeps]}`
    : KEEPS[swap.keeps ?? 'mass'];

/** What changes with the swap besides amounts: allergens, diet, grain, storage, texture. */
export function effectLines(offer: SwapOffer): string[] {
  const names = (allergens: readonly string[]) => listed(allergens.map(allergenName));
  const lines: string[] = [];
  if (offer.lost.length > 0) lines.push(`Takes out ${names(offer.lost)}.`);
  if (offer.gained.length > 0) lines.push(`Brings in ${names(offer.gained)}.`);
  if (offer.advisoryGained.length > 0) lines.push(`New "may contain": ${names(offer.advisoryGained)}.`);
  if (offer.advisoryStill.length > 0)
    lines.push(`May still contain ${names(offer.advisoryStill)}, by a label.`);
  if (offer.unreadGained.length > 0) lines.push(unreadLine(offer));
  if (lines.length === 0) lines.push('Allergens contained: no change.');
  lines.push(...unlistedLines(offer), ...statusLines(offer), ...holdingLines(offer), textureLine(offer));
  return lines.filter((line) => line !== '');
}

/** Many unknowns at once say one thing: read that label. */
function unreadLine({ swaps, unreadGained }: SwapOffer): string {
  const labels = listed(swaps.flatMap(({ to }) => (to?.allergenBasis === 'kind' ? [to.name] : [])));
  const what = unreadGained.length > 3 ? 'its allergens' : listed(unreadGained.map(allergenName));
  return labels === '' ? `Not known: ${what}.` : `Read the label of ${labels} first; not known: ${what}.`;
}

function unlistedLines(offer: SwapOffer): string[] {
  const before = new Set(offer.allergensBefore.unlisted.map((u) => u.concern));
  const gained = offer.allergensAfter.unlisted.map((u) => u.concern).filter((c) => !before.has(c));
  const seeds = offer.swaps.flatMap(({ to }) =>
    to && /sunflower|pumpkin/i.test(to.name)
      ? [/sunflower/i.test(to.name) ? 'sunflower' : 'pumpkin seed']
      : [],
  );
  const asked = [...new Set([...gained.map(allergenName), ...seeds])];
  return asked.length > 0
    ? [`Holds ${listed(asked)}: not on this kitchen's allergen list, yet some people avoid it; ask.`]
    : [];
}

function statusLines(offer: SwapOffer): string[] {
  const { allergensBefore: was, allergensAfter: is } = offer;
  const lines: string[] = [];
  if (was.vegan.status !== is.vegan.status) lines.push(`Vegan: ${is.vegan.status.replace('_', ' ')} now.`);
  if (was.gluten.status !== is.gluten.status) lines.push(`${GLUTEN_WORDS[is.gluten.status]} now.`);
  return lines;
}

const holdingLines = (offer: SwapOffer): string[] =>
  offer.storageBefore === offer.storageAfter
    ? []
    : [`Storage: ${offer.storageAfter} now, was ${offer.storageBefore}.`];

function textureLine({ texture }: SwapOffer): string {
  const spoons = `${texture.tablespoons} Tbsp`;
  if (texture.feel === 'too_dry')
    return `Drier: add liquid 1 Tbsp at a time, about ${spoons}, until it holds.`;
  if (texture.feel === 'too_wet')
    return `Wetter: hold back about ${spoons} of the liquid; add 1 Tbsp at a time.`;
  return texture.feel === 'holds' ? 'Texture: stays in the range of the recipe.' : '';
}
