import type { Desk } from '../../../kitchen/stock/desk.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked } from '../../command.ts';
import { batchLabel, labelFile } from '../../stock/label.ts';
import { batchCalled } from '../../stock/which.ts';
import { recipeMeant } from '../../which-recipe.ts';

/** The label of a batch as it stands now, to copy or print: one for each place and date it is held under. */
export async function labelAnswer(asked: Asked, desk: Desk, code: string | undefined): Promise<Answered> {
  const recipe = code === undefined ? await recipeMeant(asked) : undefined;
  const newest = (await desk.ledger.holdings())
    .filter((holding) => holding.batch.recipeId === recipe?.id)
    .sort((a, b) => b.batch.madeMs - a.batch.madeMs)[0];
  if (newest) return labelAnswer(asked, desk, newest.batch.code);
  if (code === undefined) {
    throw new Problem(
      'needs_more',
      'The label of which batch?',
      'Name its code, like "label B3"; "stock" shows the codes.',
    );
  }
  const batch = await batchCalled(desk, code);
  const held = (await desk.ledger.holdings()).filter((holding) => holding.batch.id === batch.id);
  if (held.length === 0)
    throw new Problem('not_possible', `Nothing is left of ${code}.`, 'Type "stock" for what is there.');
  const labels = [
    ...new Map(
      held.map((holding) => batchLabel(asked, batch, holding)).map((lines) => [lines.join(' '), lines]),
    ).values(),
  ];
  return {
    answer: {
      title: `Label for ${code}, ${batch.recipeTitle.toLowerCase()}:`,
      sections: labels.map((items) => ({ kind: 'list', items })),
      cautions: [],
      next: [{ label: 'stock', says: 'stock' }],
      attachments: [labelFile(code, labels)],
      audience: 'channel',
      data: { batch: code, labels },
    },
  };
}
