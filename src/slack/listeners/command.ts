import type { AllMiddlewareArgs, SlackCommandMiddlewareArgs } from '@slack/bolt';
import { incomingText } from '../incoming-text.ts';
import { answerOnce, type Desk, TRIGGER_REMEMBERED_MS } from './desk.ts';

/** `/kitchen …`: answered to the asker, or to the channel where the kitchen works by the answer. */
export const answerCommand =
  (desk: Desk) =>
  ({ command, client, context, respond }: SlackCommandMiddlewareArgs & AllMiddlewareArgs): Promise<void> =>
    answerOnce(
      desk,
      {
        text: incomingText(command.text ?? '', context.botUserId),
        place: {
          workspace: context.teamId ?? '',
          channel: command.channel_id,
          user: command.user_id,
          isOwnDirectMessage: false,
        },
        client,
        respond,
        manner: 'aside',
      },
      [[`trigger:${command.trigger_id}`, TRIGGER_REMEMBERED_MS]],
    );
