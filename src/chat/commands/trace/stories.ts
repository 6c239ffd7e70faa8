import type { BatchStory } from '../../../kitchen/stock/batch-story.ts';
import type { NextStep, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { lotsLine, overrideLines, storyLine } from '../../stock/story.ts';

/** "2 batches, B1, B2: 80 made, 40 served, 0 tossed, 40 left." */
export function sumsText(told: readonly BatchStory[]): string {
  const sum = (pick: (story: BatchStory) => number) => told.reduce((total, each) => total + pick(each), 0);
  const left = told.flatMap((story) => story.left).reduce((total, { pieces }) => total + pieces, 0);
  const codes = told.map(({ batch }) => batch.code).join(', ');
  return `${told.length === 1 ? '1 batch' : `${told.length} batches`}, ${codes}: ${sum(({ made }) => made)} made, ${sum(({ served }) => served)} served, ${sum(({ tossed }) => tossed)} tossed, ${left} left.`;
}

/** What became of each batch, the lots in it, and what was let pass. */
export function storySections(asked: Asked, told: readonly BatchStory[]): Section[] {
  const overrides = told.flatMap(overrideLines);
  return [
    { kind: 'list', items: told.map((story) => storyLine(asked, story)) },
    { kind: 'list', heading: 'Lots', items: told.map((story) => lotsLine(asked, story)) },
    ...(overrides.length > 0 ? [{ kind: 'list' as const, heading: 'Staff override', items: overrides }] : []),
  ];
}

export const recallCaution = ({ kitchen }: Asked): string =>
  `Recalled? Set all of it aside, serve none, and tell ${kitchen.book.settings.contacts.dietitian} now. Only lots that were logged are known here.`;

export const labelsOf = (told: readonly BatchStory[]): NextStep[] =>
  told.slice(0, 2).map(({ batch }) => ({ label: `label ${batch.code}`, says: `label ${batch.code}` }));
