import type { Shelf } from '../../../kitchen/shopping/shelf-now.ts';
import { packagesFor } from '../../../nutrition/cost/packages.ts';
import type { Food } from '../../../nutrition/food.ts';
import { findSwaps } from '../../../nutrition/swap/find-swaps.ts';
import type { LineSwap, SwapOffer } from '../../../nutrition/swap/offer.ts';
import type { Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { findFood } from '../../find-food.ts';
import { dollars } from '../../money.ts';
import { listed } from '../../need-words.ts';
import { pantryWords } from '../../pantry/amount.ts';
import { linesMeant } from '../swap/lines-meant.ts';
import { effectLines } from '../swap/offer-text.ts';
import { offerData } from '../swap/offers.ts';
import type { Batch } from './batches.ts';

/** What may stand in for what the shop does not have, batch by batch. */
export interface Substitutes {
  /** Foods of these batches that cannot be had. */
  readonly out: ReadonlySet<string>;
  readonly sections: readonly Section[];
  readonly data: readonly Record<string, unknown>[];
}

const SHOWN = 3;
/** As many are looked at, so that a safer one further down is not missed. */
const LOOKED_AT = 6;

/** Swaps for each food that is out, what changes least for people with allergies first. */
export function substitutesFor(asked: Asked, batches: readonly Batch[], shelf: Shelf): Substitutes {
  const words = Array.isArray(asked.slots.out) ? asked.slots.out.map(String) : [];
  const out = new Set<string>();
  const sections: Section[] = [];
  const data: Record<string, unknown>[] = [];
  const { book } = asked.kitchen;
  for (const word of words) {
    const uses = batches.flatMap((batch) => {
      const foods = linesMeant(batch.recipe, book, word);
      return foods.length > 0 ? [{ batch, foods }] : [];
    });
    if (uses.length === 0) {
      const { name } = findFood(book, word);
      sections.push({ kind: 'text', text: `Out of ${name.toLowerCase()}: none of this takes any.` });
    }
    for (const { batch, foods } of uses) {
      for (const { id } of foods) out.add(id);
      const offers = offersFor(asked, batch, foods);
      sections.push(sectionOf(batch, foods, offers, shelf));
      data.push({
        recipe: batch.recipe.id,
        out: foods.map(({ id }) => id),
        offers: offers.map((offer) => offerData(asked, offer)),
      });
    }
  }
  return { out, sections, data };
}

function offersFor({ kitchen }: Asked, { recipe }: Batch, without: readonly Food[]): SwapOffer[] {
  const { foods, recipes, settings } = kitchen.book;
  const list = settings.allergenList;
  const { offers } = findSwaps({ recipe, foods, recipes, needs: [], list, without, most: LOOKED_AT });
  const risk = (offer: SwapOffer) =>
    100 * offer.gained.length + 10 * offer.advisoryGained.length + Math.min(9, offer.unreadGained.length);
  return [...offers].sort((a, b) => risk(a) - risk(b) || b.score - a.score).slice(0, SHOWN);
}

function sectionOf(
  batch: Batch,
  foods: readonly Food[],
  offers: readonly SwapOffer[],
  shelf: Shelf,
): Section {
  const heading = `Out of ${listed(foods.map(({ name }) => name.toLowerCase()))}, in ${batch.recipe.title.toLowerCase()}`;
  if (offers.length === 0)
    return {
      kind: 'text',
      text: `${heading}: nothing here stands in for it. Another shop, or another recipe.`,
    };
  const share = batch.pieces / batch.recipe.yieldPieces;
  return {
    kind: 'list',
    heading: `${heading}: safest first`,
    items: offers.map(
      (offer) =>
        `${offer.swaps.map((swap) => swapText(swap, share, shelf)).join(' and ')}. ${effectLines(offer).join(' ')}`,
    ),
  };
}

/** "1.4 lb (640 g) maple syrup: 1 x 32 fl oz jug, $15.99". */
function swapText({ to, from, massAfterG }: LineSwap, share: number, shelf: Shelf): string {
  if (!to) return `leave out the ${from.name.toLowerCase()}`;
  const neededG = massAfterG * share;
  const haveG = Math.max(0, (shelf.heldG.get(to.id) ?? 0) - (shelf.pastDateG.get(to.id) ?? 0));
  const packages = packagesFor(to, neededG - haveG);
  const bought =
    haveG >= neededG
      ? 'on hand'
      : packages
        ? `${packages.count} x ${packages.packageName}, ${dollars(packages.cents)}`
        : 'price not known';
  return `${pantryWords(neededG)} ${to.name.toLowerCase()}: ${bought}`;
}
