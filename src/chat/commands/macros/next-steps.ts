import type { NextStep } from '../../answer.ts';
import type { Asking } from './answer-figures.ts';

/** What people ask after figures: another cut, the label, what is in it. */
export function nextSteps({ subject, basis }: Asking): NextStep[] {
  const { recipe, pieces } = subject;
  if (!recipe) {
    const per100 =
      basis.words === '100 g' ? [] : [{ label: 'Per 100 g', says: `${subject.title} per 100 g` }];
    return subject.food ? per100 : [];
  }
  const other = recipe.yieldPieces === pieces ? pieces + 2 : recipe.yieldPieces;
  const cut = pieces === recipe.yieldPieces ? '' : ` cut into ${pieces}`;
  const again = recipe.pan
    ? { label: `Cut into ${other}`, says: `macros ${recipe.title} cut into ${other}` }
    : { label: 'Per batch', says: `macros ${recipe.title} per batch` };
  return [
    again,
    { label: 'Label', says: `label for ${recipe.title}${cut}` },
    { label: 'Nut free?', says: `is ${recipe.title} nut free` },
  ];
}
