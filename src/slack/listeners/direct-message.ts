import type { AllMiddlewareArgs, SlackEventMiddlewareArgs } from '@slack/bolt';
import { incomingText } from '../incoming-text.ts';
import { answerOnce, type Desk, EVENT_REMEMBERED_MS } from './desk.ts';

type DirectMessage = SlackEventMiddlewareArgs<'message'> & AllMiddlewareArgs;

/** A message a person wrote to the bot; edits, other bots and system messages are not requests. */
export const answerDirectMessage =
  (desk: Desk) =>
  async ({ event, body, client, context }: DirectMessage): Promise<void> => {
    if (event.subtype !== undefined || event.channel_type !== 'im') return;
    if (event.bot_id || event.edited || !event.user || event.user === context.botUserId || !event.text)
      return;
    const place = {
      workspace: context.teamId ?? '',
      channel: event.channel,
      user: event.user,
      ...(event.thread_ts ? { thread: event.thread_ts } : {}),
      isOwnDirectMessage: true,
    };
    const homeWorkspace = event.team;
    const text = incomingText(event.text, context.botUserId);
    await answerOnce(
      desk,
      { text, place, client, manner: 'aloud', ...(homeWorkspace ? { homeWorkspace } : {}) },
      [
        [`message:${event.channel}:${event.ts}`, EVENT_REMEMBERED_MS],
        [`event:${body.event_id}`, EVENT_REMEMBERED_MS],
      ],
    );
  };
