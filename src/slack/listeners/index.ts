import type { App } from '@slack/bolt';
import {
  FORM_ACTIONS,
  KITCHEN_COMMAND,
  MARK_ACTIONS,
  NEXT_STEP_ACTIONS,
  SHORTCUTS,
  WITHOUT_ACTION,
} from '../ids.ts';
import { answerCommand } from './command.ts';
import type { Desk } from './desk.ts';
import { answerDirectMessage } from './direct-message.ts';
import { findWithout } from './find-without.ts';
import { answerMark } from './mark.ts';
import { answerMention } from './mention.ts';
import { openFormByButton, openFormByShortcut } from './open-form.ts';
import { openHome } from './open-home.ts';
import { answerPress } from './press.ts';
import { submitForm } from './submit-form.ts';

/** Everything this app listens to; the manifest asks for these and for nothing else. */
export const LISTENERS = {
  commands: [KITCHEN_COMMAND],
  /** As the manifest names them; `message.im` arrives as a `message` event. */
  events: ['app_home_opened', 'app_mention', 'message.im'],
  actions: [...NEXT_STEP_ACTIONS, ...MARK_ACTIONS, ...FORM_ACTIONS, WITHOUT_ACTION],
  shortcuts: SHORTCUTS,
  views: FORM_ACTIONS,
} as const;

export function listen(app: App, desk: Desk): void {
  app.command(KITCHEN_COMMAND, answerCommand(desk));
  app.event('app_home_opened', openHome(desk));
  app.action({ action_id: WITHOUT_ACTION, type: 'block_actions' }, findWithout(desk));
  app.event('app_mention', answerMention(desk));
  app.event('message', answerDirectMessage(desk));
  for (const id of NEXT_STEP_ACTIONS) app.action({ action_id: id, type: 'block_actions' }, answerPress(desk));
  for (const id of MARK_ACTIONS) app.action({ action_id: id, type: 'block_actions' }, answerMark(desk));
  for (const id of FORM_ACTIONS) {
    app.action({ action_id: id, type: 'block_actions' }, openFormByButton(desk));
    app.view({ callback_id: id, type: 'view_submission' }, submitForm(desk));
  }
  for (const id of SHORTCUTS) app.shortcut({ callback_id: id, type: 'shortcut' }, openFormByShortcut(desk));
}
