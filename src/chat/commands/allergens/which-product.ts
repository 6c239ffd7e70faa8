import type { Answered, Asked } from '../../command.ts';
import { KITCHEN_ROLES } from '../../roles.ts';

const QUESTION = /\?|^\s*(?:is|are|does|do|did|can|could|may|should|would|will|has|have|any|what|which)\b/i;
const MOST_NAMED = 12;

/** The request with the product that was just named, when that answers "Which product?". */
export function withProductNamed(asked: Asked): Asked {
  const { question } = asked.conversation;
  const { ingredient } = asked.slots;
  if (question?.slot !== 'ingredient' || question.reading.intent !== 'allergens') return asked;
  if (ingredient === undefined || question.reading.slots.told !== true) return asked;
  if (asked.slots.changed_product !== undefined || asked.slots.checked_label !== undefined) return asked;
  return { ...asked, slots: { ...question.reading.slots, ingredient } };
}

/** Whether it is told, and not asked, that a product changed. */
export const isTold = ({ slots, request }: Asked): boolean =>
  KITCHEN_ROLES.includes(request.asker.role) &&
  slots.changed_product !== undefined &&
  (slots.told === true || (slots.recipe === undefined && !QUESTION.test(request.text)));

/** A change that is told of a dish, or of nothing named: which product it is has to be said; what was told is kept. */
export function askWhichProduct(asked: Asked): Answered {
  const { kitchen, conversation, slots } = asked;
  const { foods, recipes } = kitchen.book;
  const recipe = recipes.get(String(slots.recipe ?? conversation.recipeId ?? ''));
  const names = [...new Set(recipe?.lines.map(({ foodId }) => foodId) ?? [])].flatMap(
    (id) => foods.get(id)?.name ?? [],
  );
  const { recipe: _dish, ...rest } = slots;
  return {
    answer: {
      title: `Which product changed${recipe ? ` in ${recipe.title.toLowerCase()}` : ''}? Not recorded yet.`,
      sections: [
        ...(names.length > 0
          ? [{ kind: 'list' as const, heading: 'On the card', items: names.slice(0, MOST_NAMED) }]
          : []),
        {
          kind: 'text',
          text: 'Name the product as its package does. Until it is recorded, set aside what was made with it.',
        },
      ],
      cautions: [],
      next: names.slice(0, 3).map((name) => ({ label: name, says: name })),
      audience: 'asker',
      data: { asks: 'ingredient', recipe: recipe?.id ?? null, logged: false },
    },
    conversation: {
      ...conversation,
      question: {
        slot: 'ingredient',
        options: names,
        reading: { intent: 'allergens', slots: { ...rest, told: true } },
      },
    },
  };
}
