import { recipesMeeting } from '../../../nutrition/meets-needs.ts';
import type { SwapAnswer, SwapQuestion } from '../../../nutrition/swap/find-swaps.ts';
import type { SwapOffer } from '../../../nutrition/swap/offer.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import {
  AVENIN_NOTE,
  CROSS_CONTACT,
  freeWords,
  isAllergy,
  listed,
  needName,
  reactionCaution,
  widerThanPork,
} from '../../need-words.ts';
import { reasonsText } from '../allergens/verdict-words.ts';
import { compareTable, pieceData } from './compare-table.ts';
import { effectLines, lineText, reasonLine } from './offer-text.ts';

/** The best swaps for a question about a recipe, or which ingredient stands in the way. */
export function offersAnswer(asked: Asked, question: SwapQuestion, found: SwapAnswer): Answer {
  return {
    title: titleOf(question, found),
    sections: [...offerSections(asked, found.offers), ...blockedSections(found), ...otherRecipes(question)],
    cautions: swapCautions(asked, question, found.offers),
    next: nextOf(question, found),
    audience: 'asker',
    data: {
      recipe: question.recipe.id,
      avoid: question.needs,
      without: (question.without ?? []).map((f) => f.id),
      offers: found.offers.map((offer) => offerData(asked, offer)),
      blocked: found.blocked.map((b) => b.food.id),
      nothingToSwap: found.nothingToSwap,
      crossContact: 'not_checked',
    },
  };
}

/** The first offer in one line; how many lines it changes when there are several. */
export function titleOf({ recipe, needs, without }: SwapQuestion, found: SwapAnswer): string {
  const free = listed(needs.map(needName), 'or');
  const [best] = found.offers;
  if (best) {
    const said = listed(best.swaps.map(lineText));
    return needs.length > 0 ? `${recipe.title} with no ${free} listed: ${said}.` : `Use ${said}.`;
  }
  if (found.nothingToSwap)
    return `Nothing to swap: no ${free} listed in ${recipe.title}, by recipe and labels; kitchen not checked.`;
  const blocking = listed(found.blocked.map((b) => b.food.name));
  const what = needs.length > 0 ? `without ${free}` : `without ${listed((without ?? []).map((f) => f.name))}`;
  return blocking === ''
    ? `No swap makes ${recipe.title} ${what} and keeps the mix workable.`
    : `No swap here makes ${recipe.title} ${what}: nothing fits for ${blocking}.`;
}

/** Each offer with its reason and effects, then the figures side by side. */
export function offerSections(asked: Asked, offers: readonly SwapOffer[]): Section[] {
  return [
    ...offers.map(
      (offer, i): Section => ({
        kind: 'list',
        heading: `Swap ${i + 1}: ${reasonLine(offer)}`,
        items: [...offer.swaps.map(lineText), ...effectLines(offer)],
      }),
    ),
    ...compareTable(asked, offers),
  ];
}

function blockedSections(found: SwapAnswer): Section[] {
  if (found.blocked.length === 0) return [];
  const items = found.blocked.map(({ food, because }) =>
    because.length > 0 ? reasonsText(because) : food.name,
  );
  return [{ kind: 'list', heading: 'Nothing in the food table can take the place of', items }];
}

/** A recipe that already meets the need is often the better answer. */
function otherRecipes({ recipe, recipes, foods, needs }: SwapQuestion): Section[] {
  if (needs.length === 0) return [];
  const meeting = recipesMeeting(recipes, foods, needs).filter((r) => r.id !== recipe.id);
  return meeting.length === 0
    ? []
    : [
        {
          kind: 'list',
          heading: `Already with no ${listed(needs.map(needName), 'or')} listed`,
          items: meeting.slice(0, 5).map((r) => r.title),
        },
      ];
}

/** What every swap answer must say, and what this one calls for. */
export function swapCautions(asked: Asked, { needs }: SwapQuestion, offers: readonly SwapOffer[]): string[] {
  const hasOats = offers.some((offer) => offer.allergensAfter.labelledOats.length > 0);
  return [
    CROSS_CONTACT,
    'A swap is a proposal until the package in your hand is read, "may contain" too.',
    ...widerThanPork(asked.request.text, needs),
    ...(needs.includes('gluten') && hasOats ? [AVENIN_NOTE] : []),
    ...(isAllergy(needs) ? [reactionCaution(asked.kitchen.book.settings)] : []),
  ];
}

function nextOf({ recipe, needs }: SwapQuestion, found: SwapAnswer): Answer['next'] {
  const says =
    found.offers.length > 0
      ? [`allergens ${recipe.title}`, `40 ${recipe.title}`]
      : needs.length > 0
        ? [`${freeWords(needs)} recipes`]
        : [`recipe for ${recipe.title}`];
  return says.map((words) => ({ label: words, says: words }));
}

export function offerData(asked: Asked, offer: SwapOffer): Record<string, unknown> {
  return {
    swaps: offer.swaps.map((s) => ({
      from: s.from.id,
      to: s.to?.id ?? null,
      massBeforeG: s.massBeforeG,
      massAfterG: s.massAfterG,
      keeps: s.keeps ?? null,
    })),
    perPieceBefore: pieceData(asked, offer.before),
    perPieceAfter: pieceData(asked, offer.after),
    allergensGained: offer.gained,
    allergensLost: offer.lost,
    advisoryGained: offer.advisoryGained,
    advisoryStill: offer.advisoryStill,
    unreadGained: offer.unreadGained,
    gluten: offer.allergensAfter.gluten.status,
    vegan: offer.allergensAfter.vegan.status,
    storage: offer.storageAfter,
    texture: offer.texture.feel,
    liquidTbsp: offer.texture.tablespoons,
    ...(offer.centsAfter === undefined ? {} : { costCentsPerPiece: Math.round(offer.centsAfter) }),
    stillThere: offer.stillThere.map((s) => ({
      food: s.food.id,
      need: s.need,
      verdict: s.judgement.verdict,
    })),
  };
}
