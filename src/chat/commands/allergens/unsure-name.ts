import type { Need } from '../../../nutrition/allergens.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { findersOf } from '../../finders.ts';
import { freeWords, listed } from '../../need-words.ts';
import { doubtfulName } from '../../reading/doubtful-name.ts';
import type { Intent } from '../../slots.ts';

/** What is done about a thing nobody here has read about. */
const READ_IT = 'Read its package, or ask the dietitian.';

/**
 * The question back when the message names something this kitchen does not have by exactly that name; nothing when
 * every name is sure. Nothing is said of what is only like it.
 */
export function whenUnsure(asked: Asked, intent: Intent, needs: readonly Need[]): Answered | undefined {
  const { text, nowMs } = asked.request;
  const name = doubtfulName(text, asked.kitchen.book, nowMs);
  return name === undefined ? undefined : unsureName(asked, name, intent, needs);
}

/** Which of the names most alike is meant? Throws `unknown_food` or `unknown_recipe` where nothing is alike. */
export function unsureName(asked: Asked, name: string, intent: Intent, needs: readonly Need[]): Answered {
  const said = name.slice(0, 60);
  const near = nearest(asked, said);
  const title = `I do not have "${said}" here, so I cannot say what is in it.`;
  if (near.length === 0) {
    const code = asked.slots.recipe === undefined ? 'unknown_food' : 'unknown_recipe';
    throw new Problem(code, title, READ_IT);
  }
  const { last: _last, question: _question, recipeId: _recipe, ...kept } = asked.conversation;
  return {
    answer: {
      title: `${title} Did you mean ${listed(near, 'or')}?`,
      sections: [{ kind: 'text', text: READ_IT }],
      cautions: [],
      next: near.map((known) => ({ label: known, says: question(known, intent, needs) })),
      audience: 'asker',
      data: { asks: 'name', name: said, near },
    },
    // Whatever was spoken of before is not what this was about: "nut free?" after it must not go back there.
    conversation: kept,
  };
}

const question = (known: string, intent: Intent, needs: readonly Need[]): string => {
  if (intent === 'swap')
    return needs.length > 0 ? `${freeWords(needs)} version of ${known}` : `instead of ${known}`;
  if (intent === 'macros') return `label for ${known}`;
  return needs.length > 0 ? `is ${known} ${freeWords(needs)}` : `allergens in ${known}`;
};

function nearest({ kitchen }: Asked, name: string): string[] {
  const { foods, recipes } = findersOf(kitchen.book);
  const found = [
    ...recipes.nearest(name, 2).map(({ title }) => title),
    ...foods.nearest(name, 2).map((food) => food.name),
  ];
  return [...new Set(found)].slice(0, 3);
}
