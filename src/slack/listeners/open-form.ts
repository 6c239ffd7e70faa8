import type {
  AllMiddlewareArgs,
  BlockAction,
  ButtonAction,
  GlobalShortcut,
  SlackActionMiddlewareArgs,
  SlackShortcutMiddlewareArgs,
} from '@slack/bolt';
import type { FormValues } from '../../chat/forms/form.ts';
import { formOf } from '../ids.ts';
import type { Person } from '../roles.ts';
import { type Desk, isId, TRIGGER_REMEMBERED_MS } from './desk.ts';

type Press = SlackActionMiddlewareArgs<BlockAction> & AllMiddlewareArgs;
type Shortcut = SlackShortcutMiddlewareArgs<GlobalShortcut> & AllMiddlewareArgs;

/** A button that opens a form, in a message or on the home. */
export const openFormByButton =
  (desk: Desk) =>
  async ({ action, body, client, context }: Press): Promise<void> => {
    const { action_id: actionId, value } = action as ButtonAction;
    const person = personOf(context.teamId, body.user.id, body.user.team_id);
    await open(desk, actionId, body.trigger_id, { person, client }, givenIn(value));
  };

/** A shortcut that opens a form, from anywhere. */
export const openFormByShortcut =
  (desk: Desk) =>
  async ({ shortcut, client, context }: Shortcut): Promise<void> => {
    const { callback_id: callbackId, trigger_id: trigger, user } = shortcut;
    await open(
      desk,
      callbackId,
      trigger,
      { person: personOf(context.teamId, user.id, user.team_id), client },
      {},
    );
  };

async function open(
  desk: Desk,
  actionId: string,
  trigger: string,
  at: Parameters<Desk['door']['open']>[2],
  given: FormValues,
): Promise<void> {
  const id = formOf(actionId);
  if (
    !id ||
    !isId(at.person.user) ||
    !(await desk.seen.isFirst(`${at.person.workspace}:trigger:${trigger}`, TRIGGER_REMEMBERED_MS))
  )
    return;
  await desk.inFlight.track(desk.door.open(id, trigger, at, given), 'forms');
}

export const personOf = (
  workspace: string | undefined,
  user: string,
  homeWorkspace: string | undefined,
): Person => ({ workspace: workspace ?? '', user, ...(homeWorkspace ? { homeWorkspace } : {}) });

/** What a button knows of the form; anything else is ignored, for a button can be old. */
function givenIn(value: string | undefined): FormValues {
  try {
    const given: unknown = JSON.parse(value ?? '');
    return typeof given === 'object' && given !== null && !Array.isArray(given) ? (given as FormValues) : {};
  } catch {
    return {};
  }
}
