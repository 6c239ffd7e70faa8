import { placeName } from '../../../kitchen/stock/places.ts';
import type { MadeBatch } from '../../../kitchen/stock/record-made.ts';
import { dateOf, sayDate } from '../../../kitchen/time/zone.ts';
import type { Answer } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { listed, needName, needsOf } from '../../need-words.ts';
import { rawCautions } from '../../raw-caution.ts';
import { batchLabel, labelFile } from '../../stock/label.ts';
import { clockText, holdingData, LOCAL_CODE, piecesOf, untilText } from '../../stock/words.ts';
import { lotCautions } from './lots.ts';
import { overrideCautions } from './override.ts';

/** What was logged: code and use-by in the title, the label to copy, what shortened the date. */
export function madeAnswer(asked: Asked, made: readonly MadeBatch[], again: boolean): Answer {
  const first = made[0];
  return {
    title: again ? `Already logged${first ? `: ${titleOf(asked, made)}` : ''}` : titleOf(asked, made),
    sections: [
      ...made.map(({ batch, holding }) => ({
        kind: 'list' as const,
        heading: `Label for ${batch.code}`,
        items: batchLabel(asked, batch, holding),
      })),
      ...made.flatMap(({ shortenedBy, batch }) => {
        if (!shortenedBy) return [];
        const name = asked.kitchen.book.foods.get(shortenedBy.foodId)?.name ?? shortenedBy.foodId;
        const text = `${batch.code}: use-by is that of the ${name.toLowerCase()} opened ${sayDate(shortenedBy.openedDate)}; the earliest date governs (FDA Food Code 3-501.17).`;
        return [{ kind: 'text' as const, text }];
      }),
    ],
    cautions: [
      ...unmet(asked, made),
      ...leftRaw(asked, made),
      ...overrideCautions(asked, made),
      ...made.flatMap(({ batch }) => lotCautions(asked, batch.lots)),
      LOCAL_CODE,
    ],
    next: ['stock', 'undo', ...(first ? [`label ${first.batch.code}`] : [])].map((says) => ({
      label: says,
      says,
    })),
    attachments: made.map(({ batch, holding }) => labelFile(batch.code, [batchLabel(asked, batch, holding)])),
    audience: 'channel',
    data: {
      logged: !again,
      batches: made.map(({ batch, holding }) => ({
        ...holdingData(holding),
        ...(batch.setUntilMs === undefined ? {} : { setUntilMs: batch.setUntilMs }),
        contains: batch.facts.contains.map(({ allergen }) => allergen),
        lots: batch.lots,
        ...(batch.facts.override ? { override: batch.facts.override } : {}),
      })),
    },
  };
}

/** By the card that was made, each card once. */
function leftRaw({ kitchen: { book } }: Asked, made: readonly MadeBatch[]): string[] {
  const recipes = new Set(made.flatMap(({ batch }) => book.recipes.get(batch.recipeId) ?? []));
  return [...recipes].flatMap((recipe) => rawCautions(recipe, book));
}

/** Said to be free of something, yet its own labels say otherwise. */
function unmet(asked: Asked, made: readonly MadeBatch[]): string[] {
  const needs = needsOf(asked.slots.avoid);
  return made.flatMap(({ batch }) => {
    const open = needs.filter((need) => batch.facts.verdicts[need] !== 'clear_by_label');
    return open.length > 0
      ? [
          `${batch.code} is not clear of ${listed(open.map(needName))} by its labels: do not hand it out as such.`,
        ]
      : [];
  });
}

const isToday = ({ request, kitchen }: Asked, date: string): boolean =>
  date === dateOf(request.nowMs, kitchen.book.settings.timeZone);

function titleOf(asked: Asked, made: readonly MadeBatch[]): string {
  return made
    .map(({ batch, holding }) => {
      const variant = batch.variant === undefined ? '' : ` (${batch.variant})`;
      const at = isToday(asked, batch.madeDate) ? clockText(asked, batch.madeMs) : sayDate(batch.madeDate);
      return `${piecesOf(batch.pieces, batch)}${variant}: batch ${batch.code}, made ${at}, ${placeName(asked.kitchen.book, holding.location)}, ${untilText(asked, holding)}.`;
    })
    .join(' ');
}
