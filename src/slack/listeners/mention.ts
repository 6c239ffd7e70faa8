import type { AllMiddlewareArgs, SlackEventMiddlewareArgs } from '@slack/bolt';
import { attachedFile, type SharedFile } from '../attached-file.ts';
import { incomingText } from '../incoming-text.ts';
import { answerOnce, type Desk, EVENT_REMEMBERED_MS } from './desk.ts';

type Mention = SlackEventMiddlewareArgs<'app_mention'> & AllMiddlewareArgs;

/** A mention in a channel: answered in its thread, private things to the asker alone. */
export const answerMention =
  (desk: Desk) =>
  async ({ event, body, client, context }: Mention): Promise<void> => {
    const { subtype, files } = event as { subtype?: string; files?: SharedFile[] };
    if (!event.user || event.bot_id || event.edited || (subtype && subtype !== 'file_share')) return;
    const attached = attachedFile(files, client);
    const place = {
      workspace: context.teamId ?? '',
      channel: event.channel,
      user: event.user,
      thread: event.thread_ts ?? event.ts,
      isOwnDirectMessage: false,
    };
    const homeWorkspace = event.user_team ?? event.source_team ?? event.team;
    const text = incomingText(event.text, context.botUserId);
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
