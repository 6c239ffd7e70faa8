import type { types } from '@slack/bolt';
import type { HomePage, HomePart } from '../../chat/home/home.ts';
import { line, richBlock, richText, titleBlock } from '../blocks/elements.ts';
import { nextStepsBlock } from '../blocks/next-steps.ts';
import { sectionBlock } from '../blocks/section.ts';
import { WITHOUT_ACTION } from '../ids.ts';
import { LIMITS } from '../limits.ts';
import { optionOf, plain } from '../modals/field-block.ts';

/** Buttons of the home answer in a direct message: the home itself has no place for an answer. */
const HOME_BLOCK = 'home';

/** A home within what Slack takes; what does not fit is said. */
export function homeView(page: HomePage): types.HomeView {
  const first = [titleBlock(page.title), richBlock(line(richText(`As of ${page.asOf}`)))];
  const blocks = page.parts.flatMap((part, at) => blockOf(part, at) ?? []);
  const room = LIMITS.viewBlocks - first.length - 1;
  const cut = blocks.length > room ? [richBlock(line(richText('There is more: ask "stock".')))] : [];
  return { type: 'home', blocks: [...first, ...blocks.slice(0, room), ...cut] };
}

function blockOf(part: HomePart, at: number): types.KnownBlock | undefined {
  switch (part.kind) {
    case 'heading':
      return titleBlock(part.text);
    case 'section':
      return sectionBlock(part.section, LIMITS.homeSection);
    case 'caution':
      return richBlock(line(richText(`Caution: ${part.text}`, LIMITS.statement)));
    case 'steps':
      return nextStepsBlock(part.steps, `${HOME_BLOCK}|${at}`);
    case 'without':
      return withoutBlock(part);
    default:
      return part satisfies never;
  }
}

function withoutBlock({ label, options, chosen }: Extract<HomePart, { kind: 'without' }>): types.KnownBlock {
  const initial = options.filter(({ value }) => chosen.includes(value)).map(optionOf);
  return {
    type: 'actions',
    // What Slack keeps of an earlier choice hangs on the id; another choice is another block.
    block_id: `${WITHOUT_ACTION}|${chosen.join(',')}`.slice(0, 255),
    elements: [
      {
        type: 'multi_static_select',
        action_id: WITHOUT_ACTION,
        placeholder: plain(label, LIMITS.placeholder),
        options: options.map(optionOf),
        ...(initial.length > 0 ? { initial_options: initial } : {}),
      },
    ],
  };
}
