import { balance as balanced } from '../../../nutrition/balance/balance.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import { mixesFor } from '../../../nutrition/scale/scale-recipe.ts';
import { MOST_PIECES } from '../../../nutrition/scale/target.ts';
import type { Answer } from '../../answer.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { needsOf } from '../../need-words.ts';
import { slotNumber } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import { askWhichRecipe, isSeveral, recipesMeant } from '../../which-recipe.ts';
import { balanceAnswer } from './balance-answer.ts';
import { balanceHead } from './head.ts';
import { howManyAnswer } from './how-many.ts';
import { startRecipe } from './start-recipe.ts';
import { foodLimitsWanted, limitsWanted } from './wanted.ts';

/** Amounts changed as little as possible so that every target holds per piece, in measures a kitchen can measure. */
export const balance: Command = {
  ...balanceHead,
  async answers(asked) {
    const slots = withLast(asked);
    const meant = await recipesMeant({ ...asked, slots });
    if (isSeveral(meant)) return askWhichRecipe({ ...asked, slots }, 'balance', 'Which one?', meant);
    if (!meant) return askWhichRecipe({ ...asked, slots }, 'balance', 'Balance which recipe?');
    const limits = limitsWanted(slots);
    if (limits.length === 0) return askTarget(asked, meant);
    const [first] = limits;
    const answer =
      slots.ask === 'pieces' && first
        ? howManyAnswer({ ...asked, slots }, meant, first)
        : await balancedAnswer({ ...asked, slots }, meant);
    return settled(asked, slots, meant, answer);
  },
};

/** A request that leans on the last balance ("nut-free?", "40") keeps its targets. */
function withLast({ slots, conversation }: Asked): Slots {
  const last = conversation.last?.intent === 'balance' ? conversation.last.slots : undefined;
  if (!last || slots.target !== undefined || slots.piece_g !== undefined) return slots;
  return { ...last, ...slots };
}

async function balancedAnswer(asked: Asked, original: Recipe): Promise<Answer> {
  const { slots, kitchen } = asked;
  const { book } = kitchen;
  const needs = needsOf(slots.avoid);
  const start = startRecipe(original, book, needs);
  const pieces = piecesWanted(slots, original);
  const rawG = start.recipe.lines.reduce((sum, { massG }) => sum + massG, 0);
  const mixes = mixesFor((rawG * pieces) / original.yieldPieces, original.bowlG);
  const limits = limitsWanted(slots);
  const answer = await balanced({
    recipe: start.recipe,
    foods: book.foods,
    pieces: pieces / mixes,
    limits,
    foodLimits: foodLimitsWanted(slots, start.recipe, book, 1 / mixes),
  });
  return balanceAnswer({ asked, original, start, needs, limits, pieces, mixes, answer });
}

function piecesWanted(slots: Slots, recipe: Recipe): number {
  const pieces = slotNumber(slots, 'quantity') ?? recipe.yieldPieces;
  if (Number.isSafeInteger(pieces) && pieces >= 1 && pieces <= MOST_PIECES) return pieces;
  throw new Problem(
    'bad_quantity',
    `${pieces} is not a number of pieces to make.`,
    `Write a whole number, for example "40 ${recipe.pieceUnit}s".`,
  );
}

function settled(asked: Asked, slots: Slots, recipe: Recipe, answer: Answer): Answered {
  const { question: _answered, ...kept } = asked.conversation;
  const { ask: _ask, ...said } = slots;
  return {
    answer,
    conversation: {
      ...kept,
      recipeId: recipe.id,
      last: { intent: 'balance', slots: { ...said, recipe: recipe.id } },
    },
  };
}

/** The recipe is known and no target: ask for one. */
function askTarget(asked: Asked, recipe: Recipe): Answered {
  const says = [`${recipe.title} at least 20 g protein`, `${recipe.title} under 10 g sugars`];
  return {
    answer: {
      title: `${recipe.title}: which target per ${recipe.pieceUnit}?`,
      sections: [{ kind: 'text', text: 'A nutrient with an amount, a share of energy, a cost or a mass.' }],
      cautions: [],
      next: says.map((each) => ({ label: each, says: each })),
      audience: 'asker',
      data: { asks: 'target', recipe: recipe.id },
    },
    conversation: { ...asked.conversation, recipeId: recipe.id },
  };
}
