import type { AllMiddlewareArgs, SlackViewMiddlewareArgs, ViewSubmitAction } from '@slack/bolt';
import { formOf } from '../ids.ts';
import { filledIn } from '../modals/filled-in.ts';
import { type Desk, isId } from './desk.ts';
import { personOf } from './open-form.ts';

type Submission = SlackViewMiddlewareArgs<ViewSubmitAction> & AllMiddlewareArgs;

/** A form filled in: answered in its own view, or sent back with what to mend beside each field. */
export const submitForm =
  (desk: Desk) =>
  async ({ ack, view, body, client, context }: Submission): Promise<void> => {
    const id = formOf(view.callback_id);
    const person = personOf(context.teamId, body.user.id, body.user.team_id);
    if (!id || !isId(person.user)) return ack();
    // Whatever arrives is acknowledged: an open request would show the person a time-out.
    const shown = { id: view.id, title: view.title?.text ?? 'Form' };
    const values = filledIn(view.state?.values ?? {});
    await desk.inFlight.track(
      desk.door.submit(id, shown, values, { person, client }, (answer) => ack(answer)),
      'forms',
    );
  };
