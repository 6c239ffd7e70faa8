import type { types } from '@slack/bolt';
import type { Answer } from '../../chat/answer.ts';
import type { Refusal } from '../../chat/chat.ts';
import type { Faults, FormPage, FormValues } from '../../chat/forms/form.ts';
import { line, richBlock, richText } from '../blocks/elements.ts';
import { answerMessage, errorMessage } from '../blocks/message.ts';
import { formActionId } from '../ids.ts';
import { LIMITS } from '../limits.ts';
import { fieldBlock, plain } from './field-block.ts';

const words = (text: string): types.KnownBlock => richBlock(line(richText(text)));

const modal = (
  title: string,
  blocks: types.KnownBlock[],
  more: Partial<types.ModalView> = {},
): types.ModalView => ({
  type: 'modal',
  title: plain(title, LIMITS.viewTitle),
  close: plain('Close', LIMITS.viewTitle),
  blocks,
  ...more,
});

/** What is shown at once, while what belongs on the form is looked up. */
export const openingView = (): types.ModalView => modal('One moment', [words('Looking at the shelf…')]);

/** Shown when saying it takes longer than Slack waits; what was typed travels along. */
export const savingView = (title: string, values: FormValues): types.ModalView =>
  modal(title, [words('Writing it down…')], metadata(values));

/** The form, with what is wrong above it where it could not be said beside the fields. */
export function formView(page: FormPage, faults: Faults = {}): types.ModalView {
  const labels = new Map(page.fields.map(({ id, label }) => [id, label]));
  const wrong = Object.entries(faults).map(([id, fault]) =>
    words(`${labels.get(id) ?? 'Not logged'}: ${fault}`),
  );
  const intro = page.intro === undefined ? [] : [words(page.intro)];
  const blocks = [...wrong, ...intro, ...page.fields.map(fieldBlock)];
  if (page.fields.length === 0) return modal(page.title, blocks);
  return modal(page.title, blocks, {
    callback_id: formActionId(page.id),
    submit: plain(page.submit, LIMITS.viewTitle),
    close: plain('Cancel', LIMITS.viewTitle),
  });
}

/** What was answered; its follow-ups have no place in a modal. */
export const answerView = (title: string, answer: Answer): types.ModalView =>
  modal(title, answerMessage({ ...answer, next: [] }, 'modal').blocks);

export const refusalView = (title: string, refusal: Refusal): types.ModalView =>
  modal(title, errorMessage(refusal).blocks);

function metadata(values: FormValues): Partial<types.ModalView> {
  const text = JSON.stringify(values);
  return text.length <= LIMITS.viewMetadata ? { private_metadata: text } : {};
}
