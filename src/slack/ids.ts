import { FORM_IDS, type FormId } from '../chat/forms/form.ts';
import { LIMITS } from './limits.ts';

/** The one command a workspace gets; everything it says can also be said in a mention or a direct message. */
export const KITCHEN_COMMAND = '/kitchen';

/** One id for each follow-up button of a message: Slack wants them different within a block. */
export const NEXT_STEP_ACTIONS = Array.from({ length: LIMITS.buttons }, (_, at) => `next_step_${at + 1}`);
/** The same for buttons whose outcome the message itself shows. */
export const MARK_ACTIONS = Array.from({ length: LIMITS.buttons }, (_, at) => `mark_${at + 1}`);

const FORM = 'form_';

/** The id of what opens a form, and of the form itself. */
export const formActionId = (id: FormId): string => `${FORM}${id}`;
export const FORM_ACTIONS = FORM_IDS.map(formActionId);
/** Slack takes five shortcuts of an app; the settings open from the home. */
export const SHORTCUTS = FORM_IDS.filter((id) => id !== 'settings').map(formActionId);
export const formOf = (actionId: string): FormId | undefined =>
  FORM_IDS.find((id) => formActionId(id) === actionId);

/** "Find me one without…" on the home. */
export const WITHOUT_ACTION = 'home_without';
