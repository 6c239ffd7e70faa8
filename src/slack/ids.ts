import { LIMITS } from './limits.ts';

/** The one command a workspace gets; everything it says can also be said in a mention or a direct message. */
export const KITCHEN_COMMAND = '/kitchen';

/** One id for each follow-up button of a message: Slack wants them different within a block. */
export const NEXT_STEP_ACTIONS = Array.from({ length: LIMITS.buttons }, (_, at) => `next_step_${at + 1}`);
/** The same for buttons whose outcome the message itself shows. */
export const MARK_ACTIONS = Array.from({ length: LIMITS.buttons }, (_, at) => `mark_${at + 1}`);
