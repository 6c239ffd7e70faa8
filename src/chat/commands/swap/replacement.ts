import type { Food } from '../../../nutrition/food.ts';
import { findSwaps, type SwapQuestion, tryReplacement } from '../../../nutrition/swap/find-swaps.ts';
import { affinity, formOf } from '../../../nutrition/swap/form.ts';
import type { SwapOffer } from '../../../nutrition/swap/offer.ts';
import { candidateOf } from '../../../nutrition/swap/table.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { allergenName, freeWords, listed, needName } from '../../need-words.ts';
import { verdictTitle } from '../allergens/verdict-words.ts';
import { lineText } from './offer-text.ts';
import { offerData, offerSections, swapCautions } from './offers.ts';

/** One replacement somebody named: worked out in full, with what speaks against it first. */
export function replacementAnswer(asked: Asked, question: SwapQuestion, replacement: Food): Answer {
  const offer = tryReplacement(question, replacement);
  const alternatives = findSwaps({ ...question, most: 2 }).offers.filter((o) =>
    o.swaps.every((s) => s.to?.id !== replacement.id),
  );
  const warnings = offer ? warningsOf(question, replacement, offer) : [];
  const shown = offer ? [offer, ...alternatives] : alternatives;
  return {
    title: titleOf(question, replacement, offer, warnings),
    sections: [
      ...(warnings.length > 0
        ? [{ kind: 'list', heading: 'Before you use it', items: warnings } as const]
        : []),
      ...offerSections(asked, shown),
    ],
    cautions: swapCautions(asked, question, shown),
    next: [{ label: 'other swaps', says: `instead of ${(question.without ?? [])[0]?.name ?? 'it'}` }],
    audience: 'asker',
    data: {
      recipe: question.recipe.id,
      avoid: question.needs,
      replacement: replacement.id,
      works: offer !== undefined,
      ...(offer ? { offer: offerData(asked, offer) } : {}),
      warnings,
      offers: alternatives.map((o) => offerData(asked, o)),
      crossContact: 'not_checked',
    },
  };
}

function titleOf(
  { recipe, needs, without }: SwapQuestion,
  replacement: Food,
  offer: SwapOffer | undefined,
  warnings: readonly string[],
): string {
  const from = listed((without ?? []).map((f) => f.name));
  if (!offer) return `${replacement.name} does not do the work of ${from}: no sensible amount of it does.`;
  if (offer.stillThere.length > 0) {
    return `With that it is not ${freeWords(needs)}. ${verdictTitle(recipe.title, needs, offer.stillThere)}`;
  }
  const free = needs.length > 0 ? `, no ${listed(needs.map(needName), 'or')} listed` : '';
  const brings = offer.gained.length > 0 ? `; it brings in ${listed(offer.gained.map(allergenName))}` : '';
  const odd = warnings.length > 0 && brings === '' ? '; read the warning first' : '';
  return `${listed(offer.swaps.map(lineText))}${free}${brings}${odd}.`;
}

function warningsOf(question: SwapQuestion, replacement: Food, offer: SwapOffer): string[] {
  const to = candidateOf(replacement);
  const roles = new Set(offer.swaps.map((s) => s.role));
  const warnings: string[] = [];
  if (offer.gained.length > 0)
    warnings.push(
      `It brings in ${listed(offer.gained.map(allergenName))}: say so on the label and to whoever eats it.`,
    );
  if (offer.advisoryGained.length > 0)
    warnings.push(`Its label says it may contain ${listed(offer.advisoryGained.map(allergenName))}.`);
  if (!to.approved) warnings.push('It is not approved by the dietitian; do not use it until it is.');
  if (question.recipe.moistureLoss === 0 && !to.readyToEat)
    warnings.push('It is not ready to eat as it is, and this recipe is not baked.');
  if (![...roles].some((role) => replacement.roles.includes(role)))
    warnings.push('This kitchen does not use it for that work; try a small batch first.');
  else if (offer.swaps.some((s) => affinity(formOf(s.from), to.form) < 0.3))
    warnings.push('It is a different kind of food; taste and set will change. Try a small batch first.');
  return warnings;
}
