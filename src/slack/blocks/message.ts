import type { types } from '@slack/bolt';
import type { Answer, Section } from '../../chat/answer.ts';
import type { Reply } from '../../chat/chat.ts';
import { LIMITS } from '../limits.ts';
import { escaped } from '../text.ts';
import { boldText, costOf, line, richBlock, richText, titleBlock } from './elements.ts';
import { fallbackText } from './fallback-text.ts';
import { nextStepsBlock } from './next-steps.ts';
import { isDrawable, sectionBlock } from './section.ts';

/** A message ready to send: blocks for people who see, `text` for notifications and screen readers. */
export interface Message {
  readonly text: string;
  readonly blocks: types.KnownBlock[];
}

/** An answer within Slack's limits, whatever its size; what is left out is counted. `blockId` names the row of buttons. */
export function answerMessage(answer: Answer, blockId: string): Message {
  const cautions = cautionsBlock(answer.cautions);
  const steps = nextStepsBlock(answer.next, blockId);
  const first = titleBlock(answer.title);
  const last = [cautions, steps].filter((block) => block !== undefined);
  const taken = [first, ...last].reduce((sum, block) => sum + costOf(block), 0);
  const sections = [...answer.sections, ...attachmentSections(answer)].filter(isDrawable);
  const middle = sectionBlocks(sections, LIMITS.message - taken, LIMITS.blocks - 1 - last.length);
  return {
    text: fallbackText(answer),
    blocks: [first, ...middle, ...last],
  };
}

/** A request that failed: what is wrong and what to write instead. */
export function errorMessage(error: NonNullable<Reply['error']>): Message {
  return {
    text: escaped(`${error.message} ${error.hint}`.trim(), LIMITS.fallbackText),
    blocks: [
      richBlock(line(boldText(error.message, LIMITS.statement))),
      richBlock(line(richText(error.hint, LIMITS.statement))),
    ],
  };
}

function sectionBlocks(sections: readonly Section[], room: number, most: number): types.KnownBlock[] {
  const blocks: types.KnownBlock[] = [];
  const notice = (count: number) =>
    richBlock(line(richText(`and ${count} more parts; ask for less at once`)));
  let left = room - costOf(notice(sections.length));
  for (const [at, section] of sections.entries()) {
    const isLast = at === sections.length - 1;
    const block = blocks.length < most - (isLast ? 0 : 1) ? sectionBlock(section, left) : undefined;
    if (!block) return [...blocks, notice(sections.length - at)];
    blocks.push(block);
    left -= costOf(block);
  }
  return blocks;
}

function cautionsBlock(cautions: readonly string[]): types.KnownBlock | undefined {
  if (cautions.length === 0) return undefined;
  const words = cautions.map((caution) => `Caution: ${caution}`).join('\n');
  return richBlock(line(richText(words, LIMITS.statement)));
}

/** Files as text; one that only repeats what the answer says, such as a label to print, is not said twice. */
function attachmentSections({ attachments = [], sections }: Answer): Section[] {
  const said = new Set(sections.flatMap(linesOf));
  return attachments.flatMap(({ fileName, mediaType, content }) => {
    const lines = content.trimEnd().split('\n');
    if (lines.every((text) => text.trim() === '' || said.has(text.trim()))) return [];
    const columns = [{ name: mediaType, align: 'left' as const }];
    return [{ kind: 'table' as const, heading: fileName, columns, rows: lines.map((text) => [text]) }];
  });
}

function linesOf(section: Section): readonly string[] {
  if (section.kind === 'table') return [];
  const texts = section.kind === 'text' ? [section.text] : section.items;
  return texts.flatMap((text) => text.split('\n')).map((text) => text.trim());
}
