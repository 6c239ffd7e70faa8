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
import { type Farewell, leaveRevoked, leaveUninstalled } from './farewell.ts';
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
  events: ['app_home_opened', 'app_mention', 'message.im', 'app_uninstalled', 'tokens_revoked'],
  actions: [...NEXT_STEP_ACTIONS, ...MARK_ACTIONS, ...FORM_ACTIONS, WITHOUT_ACTION],
  shortcuts: SHORTCUTS,
  views: FORM_ACTIONS,
} as const;

/** Few listeners, each for a family of ids: every payload is held against all of them before it is acknowledged. */
export function listen(app: App, desk: Desk, farewell: Farewell): void {
  app.command(KITCHEN_COMMAND, answerCommand(desk));
  app.event('app_home_opened', openHome(desk));
  app.event('app_mention', answerMention(desk));
  app.event('message', answerDirectMessage(desk));
  app.event('app_uninstalled', leaveUninstalled(farewell));
  app.event('tokens_revoked', leaveRevoked(farewell));
  app.action({ action_id: oneOf(NEXT_STEP_ACTIONS), type: 'block_actions' }, answerPress(desk));
  app.action({ action_id: oneOf(MARK_ACTIONS), type: 'block_actions' }, answerMark(desk));
  app.action({ action_id: WITHOUT_ACTION, type: 'block_actions' }, findWithout(desk));
  app.action({ action_id: oneOf(FORM_ACTIONS), type: 'block_actions' }, openFormByButton(desk));
  app.shortcut({ callback_id: oneOf(SHORTCUTS), type: 'shortcut' }, openFormByShortcut(desk));
  app.view({ callback_id: oneOf(FORM_ACTIONS), type: 'view_submission' }, submitForm(desk));
}

const oneOf = (ids: readonly string[]): RegExp => new RegExp(`^(?:${ids.join('|')})$`);
