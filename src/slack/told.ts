import type { types } from '@slack/bolt';
import type { Mark } from '../chat/answer.ts';
import { line, richBlock, richText } from './blocks/elements.ts';
import type { Message } from './blocks/message.ts';
import { nextStepsBlock } from './blocks/next-steps.ts';
import { MARK_ACTIONS } from './ids.ts';
import { LIMITS } from './limits.ts';
import { cut, escaped } from './text.ts';

/** Names our reminders in a channel's history; the payload's `id` is the message's own. */
export const REMINDER_EVENT = 'batchbell_reminder';
const TOLD = 'told';
const MARKED = 'marked';
const MEMBER = /^[UW][A-Z0-9]+$/;

/** A message that told something unasked, as it stands in Slack when one of its buttons is pressed. */
export interface ToldMessage {
  readonly channel: string;
  readonly ts: string;
  readonly text: string;
  readonly blocks: readonly types.KnownBlock[];
}

/** The id of the row of buttons of a told message. Slack wants another one each time the message changes. */
export const toldBlockId = (messageId: string, version = 0): string => [TOLD, messageId, version].join('|');

function toldId(blockId: string | undefined): { id: string; version: number } | undefined {
  const [mark, id, version] = blockId?.split('|') ?? [];
  return mark === TOLD && id ? { id, version: Number(version) || 0 } : undefined;
}

export const reminderMetadata = (id: string) => ({ event_type: REMINDER_EVENT, event_payload: { id } });

/** The message with who did what in it, and the buttons that are left; everything else as it was. */
export function marked(told: ToldMessage, mark: Mark): { message: Message; id?: string } {
  const before = told.blocks.find((block) => block.block_id?.startsWith(MARKED));
  const buttons = told.blocks.find((block) => toldId(block.block_id));
  const { id, version } = toldId(buttons?.block_id) ?? { id: undefined, version: 0 };
  const kept = told.blocks.filter((block) => block !== before && block !== buttons);
  const marks = nextStepsBlock(mark.next, 'x')?.elements ?? [];
  const elements = [...othersOf(buttons), ...marks].slice(0, LIMITS.buttons);
  const row: types.KnownBlock[] =
    elements.length > 0 ? [{ type: 'actions', block_id: toldBlockId(id ?? '', version + 1), elements }] : [];
  const status = richBlock(line(person(mark.who), richText(` ${mark.did}`, LIMITS.item)));
  return {
    message: {
      text: `${escaped(`${mark.who} ${mark.did}`, LIMITS.item)}\n${withoutMark(told.text, before)}`,
      blocks: [...kept, { ...status, block_id: `${MARKED}|${version + 1}` }, ...row],
    },
    ...(id ? { id } : {}),
  };
}

/** Slack shows the name of a member id; a code of the kitchen is shown as it is. */
const person = (who: string): types.RichTextText | types.RichTextUserMention =>
  MEMBER.test(who) ? { type: 'user', user_id: who } : richText(who, LIMITS.item, { bold: true });

function othersOf(block: types.KnownBlock | undefined): types.ActionsBlock['elements'] {
  if (block?.type !== 'actions') return [];
  return block.elements.filter(({ action_id: id }) => !MARK_ACTIONS.includes(id ?? ''));
}

const withoutMark = (text: string, before: types.KnownBlock | undefined): string =>
  cut(before ? text.slice(text.indexOf('\n') + 1) : text, LIMITS.fallbackText);
