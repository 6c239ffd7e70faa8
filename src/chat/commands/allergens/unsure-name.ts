import type { Need } from '../../../nutrition/allergens.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { findersOf } from '../../finders.ts';
import { freeWords } from '../../need-words.ts';

/** What is done about a thing nobody here has read about. */
const READ_IT = 'Read its package, or ask the dietitian.';

/** Only a part of what was named is known: the person decides whether that is what they mean. */
export function unsureName(strange: string, known: string, needs: readonly Need[]): Answer {
  const says = needs.length > 0 ? `is ${known} ${freeWords(needs)}` : `allergens in ${known}`;
  return {
    title: `I do not know "${strange.slice(0, 60)}" here, so I cannot say what is in it.`,
    sections: [{ kind: 'text', text: `${READ_IT} If you mean ${known}, ask about that.` }],
    cautions: [],
    next: [{ label: known, says }],
    audience: 'asker',
    data: { asks: 'name', known },
  };
}

/** The problem for a name this kitchen has neither as a recipe nor as a food. */
export function unknownThing(
  { kitchen }: Asked,
  words: string,
  code: 'unknown_recipe' | 'unknown_food',
): Problem {
  const { foods, recipes } = findersOf(kitchen.book);
  const near = [
    ...recipes.nearest(words, 2).map(({ title }) => title),
    ...foods.nearest(words, 2).map(({ name }) => name),
  ];
  const known = near.length > 0 ? ` Or did you mean ${near.slice(0, 3).join(', ')}?` : '';
  return new Problem(
    code,
    `I do not know "${words.slice(0, 60)}" here, so I cannot say what is in it.`,
    `${READ_IT}${known}`,
  );
}
