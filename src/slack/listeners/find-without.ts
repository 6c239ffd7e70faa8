import type { AllMiddlewareArgs, BlockAction, SlackActionMiddlewareArgs } from '@slack/bolt';
import { needsAmong } from '../../chat/need-words.ts';
import type { Desk } from './desk.ts';
import { personOf } from './open-form.ts';

type Choice = SlackActionMiddlewareArgs<BlockAction> & AllMiddlewareArgs;

/** "Find me one without…": on the home, which nobody else sees. */
export const findWithout =
  (desk: Desk) =>
  async ({ action, body, client, context }: Choice): Promise<void> => {
    const { selected_options: options = [] } = action as { selected_options?: { value?: string }[] };
    const person = personOf(context.teamId, body.user.id, body.user.team_id);
    const needs = needsAmong(options.map(({ value }) => value ?? ''));
    await desk.inFlight.track(desk.board.without(person, client, needs), 'homes');
  };
