import type { AllMiddlewareArgs, SlackEventMiddlewareArgs } from '@slack/bolt';
import { type Desk, EVENT_REMEMBERED_MS } from './desk.ts';
import { personOf } from './open-form.ts';

type Opened = SlackEventMiddlewareArgs<'app_home_opened'> & AllMiddlewareArgs;

/** Somebody looks at the home; opening the messages beside it sends the same event. */
export const openHome =
  (desk: Desk) =>
  async ({ event, body, client, context }: Opened): Promise<void> => {
    const workspace = context.teamId;
    if (event.tab !== 'home' || !workspace) return;
    if (!(await desk.seen.isFirst(`${workspace}:event:${body.event_id}`, EVENT_REMEMBERED_MS))) return;
    await desk.inFlight.track(desk.board.opened(personOf(workspace, event.user, undefined), client), 'homes');
  };
