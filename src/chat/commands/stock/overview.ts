import { sayInstead, type Which } from '../../../kitchen/stock/choose.ts';
import { placeName } from '../../../kitchen/stock/places.ts';
import { sayHowOn } from '../../../kitchen/stock/say-holds.ts';
import { belowPar, type RecipeStock, type StockView, sumOf } from '../../../kitchen/stock/view.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { opens } from '../../forms/opens.ts';
import { KITCHEN_ROLES } from '../../roles.ts';
import { counted, holdingData, holdingLine, piecesOf } from '../../stock/words.ts';

/** A phone screen holds about this many lines of one list. */
const MOST_LINES = 10;

/** Everything: what can be served and what to use first; then what sets, what goes, what is frozen, what is low. */
export function overview(asked: Asked, view: StockView): Answer {
  return answerOf(asked, view, titleOf(view), [
    ...group(asked, 'Use first', view.usable),
    ...others(asked, view),
    ...parSection(view),
  ]);
}

/** One recipe, batch or kind of piece. */
export function someStock(asked: Asked, view: StockView, which: Which): Answer {
  const { recipeId, code } = which;
  const recipe = view.recipes.find((each) => each.recipeId === recipeId);
  const what =
    recipe?.title.toLowerCase() ??
    asked.kitchen.book.recipes.get(recipeId ?? '')?.title.toLowerCase() ??
    (code === undefined
      ? which.pieceUnit === undefined
        ? 'pieces'
        : `${which.pieceUnit}s`
      : `pieces of ${code}`);
  const par = recipe?.par === undefined ? '' : ` (par ${recipe.par})`;
  const first = view.usable[0];
  const now = first
    ? `${sumOf(view.usable)} ${what} can be served${par}; first out: ${first.batch.code}.`
    : `No ${what} can be served now${par}.`;
  return answerOf(asked, view, `${now}${goText(view)}`, [
    ...group(asked, undefined, view.usable),
    ...others(asked, view),
  ]);
}

/** What stands in one place, or in all of a kind. */
export function place(asked: Asked, view: StockView, places: readonly string[]): Answer {
  const names = places.map((id) => placeName(asked.kitchen.book, id)).join(' and ');
  const all = [...view.usable, ...view.held, ...view.setting, ...view.mustGo, ...view.frozen];
  const title = `${counted(sumOf(all), 'piece')} in ${names}.${goText(view)}`;
  return answerOf(asked, view, title, [...group(asked, undefined, view.usable), ...others(asked, view)]);
}

function titleOf(view: StockView): string {
  const kinds = view.recipes.filter(({ usable }) => usable > 0).map((recipe) => inWords(recipe));
  const now =
    kinds.length > 0
      ? `${sumOf(view.usable)} can be served: ${kinds.join(', ')}.`
      : 'Nothing can be served now.';
  return `${now}${goText(view)}`;
}

const inWords = ({ usable, title, pieceUnit }: RecipeStock): string =>
  piecesOf(usable, { recipeTitle: title, pieceUnit });

function goText({ mustGo, held }: StockView): string {
  const codes = (holdings: StockView['held']) =>
    [...new Set(holdings.map(({ batch }) => batch.code))].join(', ');
  const hold = held.length > 0 ? ` Held, serve none of ${sumOf(held)}: ${codes(held)}.` : '';
  return mustGo.length > 0 ? `${hold} Throw out ${sumOf(mustGo)} now: ${codes(mustGo)}.` : hold;
}

/** What is held, why, and how it goes on. */
function heldSections(asked: Asked, held: StockView['held']): Section[] {
  if (held.length === 0) return [];
  const { book } = asked.kitchen;
  const isKitchen = KITCHEN_ROLES.includes(asked.request.asker.role);
  return [
    ...group(asked, 'Held, serve none', held),
    ...(isKitchen ? [{ kind: 'text' as const, text: sayHowOn(book, held) }] : []),
  ];
}

function others(asked: Asked, view: StockView): Section[] {
  return [
    ...group(asked, 'Throw out now', view.mustGo),
    ...heldSections(asked, view.held),
    ...group(asked, 'Still setting', view.setting),
    ...group(asked, 'Frozen', view.frozen),
  ];
}

function group(asked: Asked, heading: string | undefined, holdings: StockView['usable']): Section[] {
  if (holdings.length === 0) return [];
  const lines = holdings.slice(0, MOST_LINES).map((holding) => holdingLine(asked, holding));
  const rest = holdings.length - lines.length;
  const items = rest > 0 ? [...lines, `and ${rest} more: ask for one place or recipe`] : lines;
  return [{ kind: 'list', ...(heading === undefined ? {} : { heading }), items }];
}

function parSection(view: StockView): Section[] {
  const low = belowPar(view);
  if (low.length === 0) return [];
  return [{ kind: 'text', text: `Below par: ${low.map((recipe) => parText(recipe)).join(', ')}.` }];
}

export const parText = ({ title, usable, setting, par }: RecipeStock): string =>
  `${title.toLowerCase()} ${usable + setting} of ${par ?? 0}`;

export function answerOf(asked: Asked, view: StockView, title: string, sections: readonly Section[]): Answer {
  const all = [...view.usable, ...view.held, ...view.setting, ...view.frozen, ...view.mustGo];
  const isKitchen = asked.request.asker.role !== 'athlete';
  const steps = [
    ...(view.mustGo.length > 0 && isKitchen ? ['toss everything expired'] : []),
    ...(all.length === 0 && isKitchen ? ['made 40 oat bars'] : []),
    'what do we use first',
  ];
  const empty = all.length === 0 ? sayInstead([], {}, asked.request.nowMs, asked.kitchen.book) : undefined;
  return {
    title,
    sections: empty !== undefined && isKitchen ? [...sections, { kind: 'text', text: empty }] : sections,
    cautions: [],
    next: [
      ...(all.length > 0 && isKitchen
        ? [opens('Serve, toss, count', `served 12 ${all[0]?.batch.recipeTitle.toLowerCase()}`, 'count')]
        : []),
      ...steps
        .filter((says) => says !== asked.request.text.trim().toLowerCase())
        .map((says) => ({ label: says, says })),
    ],
    audience: 'channel',
    data: {
      usable: sumOf(view.usable),
      setting: sumOf(view.setting),
      frozen: sumOf(view.frozen),
      mustGo: sumOf(view.mustGo),
      held: sumOf(view.held),
      holdings: all.map(holdingData),
      recipes: view.recipes.map((recipe) => ({ ...recipe })),
    },
  };
}
