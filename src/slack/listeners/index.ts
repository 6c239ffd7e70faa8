import type { App } from '@slack/bolt';
import { KITCHEN_COMMAND, MARK_ACTIONS, NEXT_STEP_ACTIONS } from '../ids.ts';
import { answerCommand } from './command.ts';
import type { Desk } from './desk.ts';
import { answerDirectMessage } from './direct-message.ts';
import { answerMark } from './mark.ts';
import { answerMention } from './mention.ts';
import { answerPress } from './press.ts';

/** Everything this app listens to; the manifest asks for these and for nothing else. */
export const LISTENERS = {
  commands: [KITCHEN_COMMAND],
  /** As the manifest names them; `message.im` arrives as a `message` event. */
  events: ['app_mention', 'message.im'],
  actions: [...NEXT_STEP_ACTIONS, ...MARK_ACTIONS],
} as const;

export function listen(app: App, desk: Desk): void {
  app.command(KITCHEN_COMMAND, answerCommand(desk));
  app.event('app_mention', answerMention(desk));
  app.event('message', answerDirectMessage(desk));
  for (const id of NEXT_STEP_ACTIONS) app.action({ action_id: id, type: 'block_actions' }, answerPress(desk));
  for (const id of MARK_ACTIONS) app.action({ action_id: id, type: 'block_actions' }, answerMark(desk));
}
