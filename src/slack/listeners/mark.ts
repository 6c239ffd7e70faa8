import type { AllMiddlewareArgs, BlockAction, ButtonAction, SlackActionMiddlewareArgs } from '@slack/bolt';
import { incomingText } from '../incoming-text.ts';
import type { ToldMessage } from '../told.ts';
import { answerOnce, type Desk, PRESS_REMEMBERED_MS, TRIGGER_REMEMBERED_MS } from './desk.ts';

type Press = SlackActionMiddlewareArgs<BlockAction> & AllMiddlewareArgs;

/** "I've got it", "Done", "Snooze": said with the rights of whoever presses, and shown in the message itself. */
export const answerMark =
  (desk: Desk) =>
  async ({ action, body, client, context, respond }: Press): Promise<void> => {
    const { value } = action as ButtonAction;
    const channel = body.channel?.id;
    const workspace = context.teamId;
    if (!value || !channel || !workspace) return;
    const told = toldOf(body, channel);
    const homeWorkspace = body.user.team_id;
    await answerOnce(
      desk,
      {
        text: incomingText(value),
        place: { workspace, channel, user: body.user.id, isOwnDirectMessage: false },
        client,
        respond,
        manner: 'aside',
        ...(told ? { told } : {}),
        ...(homeWorkspace ? { homeWorkspace } : {}),
      },
      [
        [`trigger:${body.trigger_id}`, TRIGGER_REMEMBERED_MS],
        [`press:${channel}:${told?.ts ?? ''}:${body.user.id}:${value}`, PRESS_REMEMBERED_MS],
      ],
    );
  };

function toldOf({ message }: BlockAction, channel: string): ToldMessage | undefined {
  if (!message?.ts || !Array.isArray(message.blocks)) return undefined;
  return { channel, ts: message.ts, text: message.text ?? '', blocks: message.blocks };
}
