import type { AllMiddlewareArgs, BlockAction, ButtonAction, SlackActionMiddlewareArgs } from '@slack/bolt';
import { incomingText } from '../incoming-text.ts';
import { placeOfPress } from '../place.ts';
import { answerOnce, type Desk, PRESS_REMEMBERED_MS, TRIGGER_REMEMBERED_MS } from './desk.ts';

type Press = SlackActionMiddlewareArgs<BlockAction> & AllMiddlewareArgs;

/** A follow-up button says its words for the person who presses it, with that person's rights. */
export const answerPress =
  (desk: Desk) =>
  async ({ action, body, client, context, respond }: Press): Promise<void> => {
    const { value, block_id: blockId } = action as ButtonAction;
    const workspace = context.teamId;
    const isHome = body.view?.type === 'home';
    const channel = isHome ? body.user.id : body.channel?.id;
    if (!value || !channel || !workspace) return;
    // The home has no place for an answer: it comes as a direct message.
    const place = isHome
      ? { workspace, channel, user: body.user.id, isOwnDirectMessage: true }
      : placeOfPress(blockId, { workspace, channel, user: body.user.id });
    const message = body.container?.message_ts ?? '';
    const homeWorkspace = body.user.team_id;
    await answerOnce(
      desk,
      {
        text: incomingText(value),
        place,
        client,
        respond,
        manner: place.thread || place.isOwnDirectMessage ? 'aloud' : 'aside',
        ...(homeWorkspace ? { homeWorkspace } : {}),
      },
      [
        [`trigger:${body.trigger_id}`, TRIGGER_REMEMBERED_MS],
        [`press:${channel}:${message}:${body.user.id}:${value}`, PRESS_REMEMBERED_MS],
      ],
    );
  };
