import type { FormId } from '../../src/chat/forms/form.ts';
import { dateOf } from '../../src/kitchen/time/zone.ts';
import { command, homePress, press, STAFF, TEAM, viewSubmission } from '../slack/payloads.ts';
import type { viewFaults } from '../slack/view-checks.ts';
import type { PeerCall } from './slack-peer.ts';
import type { WholeService } from './whole-service.ts';

export type View = Parameters<typeof viewFaults>[0];
export type Element = { action_id: string; value: string; text?: { text: string } };
export type Blocks = { block_id?: string; elements?: Element[] }[];
/** A message as it stands in a channel. */
export interface Message {
  readonly ts: string;
  readonly text: string;
  readonly blocks: Blocks;
}

/** Homes follow what happens by themselves; a reply is waited for by what it is. */
export const REPLIES = /^(?:respond|chat\.)/;

export const textOf = (call: PeerCall | undefined): string => String(call?.body.text);
export const viewOf = (call: PeerCall | undefined): View => call?.body.view as View;
export const buttonsOf = (blocks: unknown): (Element & { block_id: string })[] =>
  ((blocks ?? []) as Blocks).flatMap(({ block_id = '', elements = [] }) =>
    elements.filter(({ action_id: id }) => id).map((element) => ({ ...element, block_id })),
  );
export const replies = (calls: readonly PeerCall[]): PeerCall[] =>
  calls.filter(({ method }) => REPLIES.test(method));

let views = 0;

/** What people do with the screens of the whole service. */
export function screensOf(whole: WholeService) {
  return {
    today: () => dateOf(whole.clock.now, whole.store.kitchen.book.settings.timeZone),

    /** A form opened by its button on the home, ready to be filled in. */
    async opened(id: FormId, user = STAFF): Promise<View & { id: string }> {
      whole.forget();
      await whole.interact(homePress({ action_id: `form_${id}`, value: '{}' }, user));
      const updated = (await whole.seen(1, /^views\.update$/)).find(
        ({ method }) => method === 'views.update',
      );
      views += 1;
      return { ...viewOf(updated), id: `V${views}` };
    },

    async submitted(view: View, filled: Record<string, string | string[]>, user = STAFF) {
      const answer = await whole.interact(
        viewSubmission(view as never, filled, { user: { id: user, team_id: TEAM } }),
      );
      return answer as { response_action: string; errors?: Record<string, string>; view?: View };
    },

    /** What is answered to a command. */
    async says(text: string, user = STAFF): Promise<string> {
      whole.forget();
      await whole.command(command(text, { user_id: user }));
      return textOf(replies(await whole.seen(1, /^respond$/)).find(({ method }) => method === 'respond'));
    },

    /** Presses a button of a message; what is done about it first. */
    async presses(label: string, on: Message, user = STAFF): Promise<PeerCall | undefined> {
      whole.forget();
      // Two presses within three seconds are one impatient finger.
      whole.clock.now += 4_000;
      const button = buttonsOf(on.blocks).find(({ text }) => text?.text.includes(label));
      if (!button) throw new Error(`no button ${label}`);
      const payload = press(button.value, { user: { id: user, team_id: TEAM }, message: on });
      await whole.interact({ ...payload, actions: [{ ...payload.actions[0], ...button }] });
      return replies(await whole.seen(1, REPLIES))[0];
    },
  };
}
