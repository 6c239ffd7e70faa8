import type { AllMiddlewareArgs, SlackEventMiddlewareArgs } from '@slack/bolt';
import { attachedFile } from '../attached-file.ts';
import { incomingText } from '../incoming-text.ts';
import { answerOnce, type Desk, EVENT_REMEMBERED_MS } from './desk.ts';

type DirectMessage = SlackEventMiddlewareArgs<'message'> & AllMiddlewareArgs;

/** A message a person wrote to the bot; edits, other bots and system messages are not requests. */
export const answerDirectMessage =
  (desk: Desk) =>
  async ({ event, body, client, context }: DirectMessage): Promise<void> => {
    if ((event.subtype !== undefined && event.subtype !== 'file_share') || event.channel_type !== 'im')
      return;
    const attached = attachedFile(event.files, client);
    if (isBotsOrEdited(event) || !event.user || event.user === context.botUserId) return;
    if (!event.text && !attached) return;
    const place = {
      workspace: context.teamId ?? '',
      channel: event.channel,
      user: event.user,
      ...(event.thread_ts ? { thread: event.thread_ts } : {}),
      isOwnDirectMessage: true,
    };
    const homeWorkspace = 'team' in event ? event.team : undefined;
    const text = incomingText(event.text ?? '', context.botUserId);
    await answerOnce(
      desk,
      {
        text,
        place,
        client,
        manner: 'aloud',
        ...(attached ? { attached } : {}),
        ...(homeWorkspace ? { homeWorkspace } : {}),
      },
      [
        [`message:${event.channel}:${event.ts}`, EVENT_REMEMBERED_MS],
        [`event:${body.event_id}`, EVENT_REMEMBERED_MS],
      ],
    );
  };

const isBotsOrEdited = (event: object): boolean =>
  ('bot_id' in event && Boolean(event.bot_id)) || ('edited' in event && Boolean(event.edited));
