import type { Holding } from '../../kitchen/stock/ledger.ts';
import { stockView } from '../../kitchen/stock/view.ts';
import { NEEDS, type Need } from '../../nutrition/allergens.ts';
import type { Asked } from '../command.ts';
import { byNeeds } from '../commands/stock/needs.ts';
import { opens } from '../forms/opens.ts';
import { CROSS_CONTACT, needName } from '../need-words.ts';
import { contentLines } from '../stock/label.ts';
import { piecesOf, untilText } from '../stock/words.ts';
import type { HomePart } from './home.ts';
import { caution, heading, lines, MOST_LINES, words } from './parts.ts';

/** For athletes: what is there now and what is in it, allergens first, and one without what they avoid. */
export async function athleteHome(
  asked: Asked,
  without: readonly Need[] | undefined,
): Promise<readonly HomePart[]> {
  const { kitchen, request } = asked;
  const { workspace, who } = request.asker;
  const told = without ?? (await kitchen.rosters(workspace).get(who))?.avoid ?? [];
  const view = stockView(await kitchen.ledgers(workspace).holdings(), kitchen.book, request.nowMs);
  return [
    {
      kind: 'without',
      label: 'Find me one without…',
      options: NEEDS.map((need) => ({ value: need, label: needName(need) })),
      chosen: told,
    },
    ...(told.length > 0 ? found(asked, view, told) : everything(asked, view.usable)),
    caution(CROSS_CONTACT),
    {
      kind: 'steps',
      steps: [
        opens('What I avoid', 'help', 'needs'),
        { label: 'Before practice', says: 'what should I eat 2 hours before practice' },
        { label: 'After practice', says: 'what should I eat after practice' },
      ],
    },
  ];
}

function found(asked: Asked, view: Parameters<typeof byNeeds>[1], needs: readonly Need[]): HomePart[] {
  const answer = byNeeds(asked, view, needs);
  return [
    heading(`Without ${needs.map(needName).join(', ')}`),
    words(answer.title),
    ...answer.sections.map((section) => ({ kind: 'section' as const, section })),
    ...answer.cautions.filter((text) => text !== CROSS_CONTACT).map(caution),
  ];
}

function everything(asked: Asked, usable: readonly Holding[]): HomePart[] {
  const title = heading('In the fridge now, and what is in it');
  if (usable.length === 0)
    return [title, words('Nothing to take right now. Ask the kitchen what is coming.')];
  const shown = usable.slice(0, MOST_LINES);
  const rest = usable.length - shown.length;
  return [
    title,
    ...shown.map((holding) => {
      const { batch } = holding;
      const variant = batch.variant === undefined ? '' : `, ${batch.variant}`;
      const foods = batch.facts.ingredients.map(({ name }) => name.toLowerCase()).join('; ');
      return lines(
        [...contentLines(batch, holding), `In it: ${foods}`, untilText(asked, holding)],
        `${piecesOf(holding.pieces, batch)}${variant} (${batch.code})`,
      );
    }),
    ...(rest > 0 ? [words(`and ${rest} more batches: ask "stock"`)] : []),
  ];
}
