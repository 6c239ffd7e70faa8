import type { Holding } from '../../../kitchen/stock/ledger.ts';
import { type StockView, sumOf } from '../../../kitchen/stock/view.ts';
import type { Need } from '../../../nutrition/allergens.ts';
import { judgeAvoidedFood } from '../../../nutrition/avoided-food.ts';
import type { Verdict } from '../../../nutrition/conflict.ts';
import { standsAgainst } from '../../../nutrition/swap/offer.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import {
  AVENIN_NOTE,
  CROSS_CONTACT,
  isAllergy,
  listed,
  needName,
  reactionCaution,
} from '../../need-words.ts';
import { holdingData, holdingLine, piecesOf } from '../../stock/words.ts';
import { avoidedFoods } from '../roster/whose.ts';

const GRAVITY: readonly Verdict[] = ['clear_by_label', 'ask', 'advisory', 'conflict'];

/**
 * The gravest verdict for these needs when the batch was made, and by what was told of its labels since; what changed on
 * the card does not count. A label that nobody read leaves it open.
 */
function verdictOf(
  { kitchen }: Asked,
  { batch, labelNews = [] }: Holding,
  needs: readonly Need[],
  foods: readonly Verdict[],
): Verdict {
  const told = labelNews.flatMap(({ foodId }) => kitchen.book.foods.get(foodId) ?? []);
  const since = standsAgainst(told, needs).map(({ judgement }) => judgement.verdict);
  const open: readonly Verdict[] = labelNews.some(({ isOpen }) => isOpen) ? ['ask'] : [];
  const verdicts = [...needs.map((need) => batch.facts.verdicts[need]), ...foods, ...since, ...open];
  const worst = Math.max(...verdicts.map((verdict) => GRAVITY.indexOf(verdict)));
  return GRAVITY[worst] ?? 'ask';
}

/** What can be served now against a need, by what each batch was made of. Only the asker sees it. */
export function byNeeds(asked: Asked, view: StockView, needs: readonly Need[]): Answer {
  const all = [...view.usable, ...view.setting];
  const { foods: known } = asked.kitchen.book;
  const foods = avoidedFoods(asked.slots);
  const ofFoods = ({ batch }: Holding): Verdict[] =>
    batch.facts.ingredients.flatMap(({ foodId }) => {
      const food = known.get(foodId);
      return foods.map((word) => (food ? judgeAvoidedFood(food, word) : 'ask'));
    });
  const verdicts = new Map(
    all.map((holding) => [holding, verdictOf(asked, holding, needs, ofFoods(holding))]),
  );
  const of = (verdict: Verdict) => all.filter((holding) => verdicts.get(holding) === verdict);
  const clear = of('clear_by_label');
  const ready = clear.filter((holding) => view.usable.includes(holding));
  const avoided = listed([...needs.map(needName), ...foods], 'or');
  const groups = [
    ['Nothing against it on recipe and labels', clear],
    ['Ask or read a label first', of('ask')],
    ['A label says "may contain"', of('advisory')],
    ['Held, serve none', view.held],
  ] as const;
  const kinds = [...new Map(ready.map(({ batch }) => [batch.recipeId, batch])).values()].map((batch) =>
    piecesOf(sumOf(ready.filter((holding) => holding.batch.recipeId === batch.recipeId)), batch),
  );
  return {
    title: `${sumOf(ready)} to serve list no ${avoided}${kinds.length > 0 ? `: ${kinds.join(', ')}` : ''}; the kitchen itself is not checked.`,
    sections: groups.flatMap(([heading, found]) =>
      found.length > 0
        ? [{ kind: 'list' as const, heading, items: found.map((holding) => holdingLine(asked, holding)) }]
        : [],
    ),
    cautions: [
      CROSS_CONTACT,
      ...(needs.includes('gluten') && clear.length > 0 ? [AVENIN_NOTE] : []),
      ...(isAllergy(needs) || foods.length > 0 ? [reactionCaution(asked.kitchen.book.settings)] : []),
    ],
    next: [{ label: 'stock', says: 'stock' }],
    audience: 'asker',
    data: {
      avoid: needs,
      clear: clear.map(holdingData),
      ask: of('ask').map(holdingData),
      advisory: of('advisory').map(holdingData),
      conflict: of('conflict').map(holdingData),
      held: view.held.map(holdingData),
      crossContact: 'not_checked',
    },
  };
}
