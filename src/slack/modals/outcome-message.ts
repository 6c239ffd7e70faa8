import type { Submitted } from '../../chat/forms/desk.ts';
import { answerMessage, errorMessage, type Message } from '../blocks/message.ts';
import { blockIdOf } from '../place.ts';

const OWN_BLOCK = blockIdOf({ workspace: '', channel: '', user: '', isOwnDirectMessage: true });

/** What became of a form, as a message: for when its view is gone. */
export function outcomeMessage(done: Submitted): Message {
  if ('faults' in done) {
    const [fault = 'something was not right'] = Object.values(done.faults);
    return errorMessage({
      code: 'bad_form',
      message: `Nothing was logged: ${fault}`,
      hint: 'Open the form again.',
    });
  }
  const { answer, error } = done.reply;
  if (answer) return answerMessage(answer, OWN_BLOCK);
  return errorMessage(error ?? { code: 'internal', message: 'Nothing was logged.', hint: 'Try again.' });
}
