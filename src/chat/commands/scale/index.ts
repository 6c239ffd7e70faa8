import type { Need } from '../../../nutrition/allergens.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { scaleRecipe } from '../../../nutrition/scale/scale-recipe.ts';
import type { Answer } from '../../answer.ts';
import { type CardMeant, cardMeant, saidFirst } from '../../card-meant.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { freeWords, needsOf } from '../../need-words.ts';
import { ALL_ROLES, KITCHEN_ROLES } from '../../roles.ts';
import { slotText } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { withQuestion } from '../../stock/merged.ts';
import { askWhichRecipe, recipeMeant } from '../../which-recipe.ts';
import { batchAnswer } from './batch-answer.ts';
import { pluralOf } from './batch-words.ts';
import { factorAnswer } from './factor-answer.ts';
import { limitAnswer } from './limit-answer.ts';
import { foodInRecipe } from './line-meant.ts';
import { withConversation } from './merge-slots.ts';
import { partsAnswer } from './parts-answer.ts';
import { remembered } from './remembered.ts';
import { rescueAnswer } from './rescue-answer.ts';
import { limits, targetOf } from './target-of.ts';

/** A batch of another size, in measures and grams; and what to do when a mix goes wrong. */
export const scale: Command = {
  intent: 'scale',
  roles: ALL_ROLES,
  help: {
    line: 'any number of pieces, in kitchen measures and grams',
    examples: [
      '40 oat bars',
      'double oat bars',
      '40 oat bars of 60 g',
      'oat bars for 30 people',
      '2 jars of peanut butter, how many oat bars',
      'too dry',
      'doubled the salt by mistake',
    ],
  },
  async answers(said) {
    const asked = said.conversation.question?.reading.slots.problem === undefined ? said : withQuestion(said);
    const { slots, conversation } = asked;
    const problem = slotText(slots, 'problem');
    if (problem !== undefined) return rescued(asked, problem);
    if (Array.isArray(slots.parts) && slots.parts.length > 0) {
      return {
        answer: await partsAnswer(asked, slots.parts),
        conversation: { ...conversation, last: { intent: 'scale', slots } },
      };
    }
    if (slots.recipe === undefined) {
      const factor = factorAnswer(slots);
      if (factor) return { answer: factor };
      if (limits(slots) && conversation.recipeId === undefined) return { answer: await limitAnswer(asked) };
    }
    const recipe = await recipeMeant(asked);
    if (!recipe) return askWhichRecipe(asked, 'scale', 'Which recipe?');
    const answered = scaled(
      { ...asked, slots: withConversation({ ...slots, ...named(slots.recipe, recipe) }, conversation) },
      recipe,
    );
    const answer = await forDay(answered.answer, asked);
    const isAssumed = slots.recipe === undefined && recipe.id !== conversation.recipeId;
    return { ...answered, answer: isAssumed ? sayingWhich(answer, slots, recipe) : answer };
  },
};

/** The day is looked up only where one was said: most batches are for now, and a start should not load the games. */
async function forDay(answer: Answer, asked: Asked): Promise<Answer> {
  if (asked.slots.when === undefined) return answer;
  const { withDay } = await import('./day-meant.ts');
  return withDay(answer, asked);
}

/** "40 bars" is taken as this kitchen takes it, and says so: the wrong bars are forty too many. */
function sayingWhich(answer: Answer, { unit, portion_unit: each }: Slots, recipe: Recipe): Answer {
  const word = pluralOf(String(each ?? unit ?? recipe.pieceUnit), 2);
  const text = `"${word}" alone means ${recipe.title} here; name another recipe for those.`;
  return { ...answer, sections: [{ kind: 'text', text }, ...answer.sections] };
}

const named = (said: unknown, recipe: Recipe) => (said === undefined ? {} : { recipe: recipe.id });

function scaled(asked: Asked, recipe: Recipe): Answered {
  const { slots, kitchen, conversation } = asked;
  const { book } = kitchen;
  const needs = needsOf(slots.avoid);
  const meant = cardMeant(book, recipe, needs);
  const wanted = targetOf(meant.card, kitchen, slots);
  if (!wanted) return askHowMany(asked, recipe);
  const batch = remembered(book, recipe, slots, () => {
    const made = scaleRecipe(meant.card, book.foods, wanted.target, wanted.options);
    return {
      pieces: made.pieces,
      answer: asSwapped(batchAnswer(made, book, slots), meant, needs, made.pieces),
    };
  });
  const { question: _answered, ...kept } = conversation;
  return {
    answer: forAsker(batch.answer, asked),
    conversation: {
      ...kept,
      recipeId: recipe.id,
      batchPieces: batch.pieces,
      last: { intent: 'scale', slots: { ...slots, recipe: recipe.id, made_pieces: batch.pieces } },
    },
  };
}

/** Which swap, or that there is none, before any figure; what logs it logs the batch with that swap. */
function asSwapped(answer: Answer, meant: CardMeant, needs: readonly Need[], pieces: number): Answer {
  const { offer, note, card } = meant;
  if (note === undefined) return answer;
  const told = saidFirst(answer, needs, [note], offer);
  if (!offer) return told;
  const next = [
    { label: 'Other swaps', says: `${freeWords(needs)} version of ${card.title.toLowerCase()}` },
    { label: 'Log this batch', says: meant.madeSays(pieces) },
  ];
  return { ...told, next };
}

/** Athletes and guests log nothing. */
function forAsker(answer: Answer, { request }: Asked): Answer {
  if (KITCHEN_ROLES.includes(request.asker.role)) return answer;
  return { ...answer, next: answer.next.filter(({ says }) => !says.startsWith('made ')) };
}

/** What these need to be put right depends on the recipe's own amount of the food. */
const COUNTED_PROBLEMS = new Set(['overadded', 'forgot']);

function askRescued(asked: Asked, problem: string, food: string): Answered {
  const { recipes, foods } = asked.kitchen.book;
  const holding = [...recipes.values()].filter((recipe) => foodInRecipe(recipe, foods, food));
  const title = `Which recipe is the ${foods.get(food)?.name.toLowerCase() ?? food} for?`;
  const which = askWhichRecipe(asked, 'scale', title, holding.length > 0 ? holding : [...recipes.values()]);
  const { answer } = which;
  const wait = { kind: 'text', text: 'Do not serve the mix yet.' } as const;
  return {
    ...which,
    answer: {
      ...answer,
      sections: [...answer.sections, wait],
      data: { ...answer.data, problem, ingredient: food },
    },
  };
}

async function rescued(asked: Asked, problem: string): Promise<Answered> {
  const recipe = await recipeMeant(asked);
  const food = slotText(asked.slots, 'ingredient');
  if (!recipe && food !== undefined && COUNTED_PROBLEMS.has(problem)) return askRescued(asked, problem, food);
  const { question: _answered, ...kept } = asked.conversation;
  return {
    answer: rescueAnswer(asked, problem, recipe),
    ...(recipe ? { conversation: { ...kept, recipeId: recipe.id } } : {}),
  };
}

/** One short question; a number alone answers it. */
function askHowMany(asked: Asked, recipe: Recipe): Answered {
  const { yieldPieces, pieceUnit, title, id } = recipe;
  const reading = { intent: 'scale', slots: { ...asked.slots, recipe: id } } as const;
  const counts = [yieldPieces, yieldPieces * 2, 40];
  return {
    answer: {
      title: `How many ${pluralOf(pieceUnit, 2)}?`,
      sections: [{ kind: 'text', text: `One batch of ${title} makes ${yieldPieces}.` }],
      cautions: [],
      next: counts.map((count) => ({ label: String(count), says: `${count} ${title}` })),
      audience: 'channel',
      data: { asks: 'quantity', recipe: id, yieldPieces },
    },
    conversation: {
      ...asked.conversation,
      recipeId: id,
      last: reading,
      question: { slot: 'quantity', options: [], reading },
    },
  };
}
