/** Our own word: nobody has said where it goes. */
export const NO_CHANNEL = 'no_channel';

/** What is wrong with a channel, by Slack's documented error names, and what staff can do about it. */
const TROUBLES: Readonly<Record<string, string>> = {
  channel_not_found: 'the channel is deleted, or private and without me. Invite me, or set another channel.',
  not_in_channel: 'I am not in the channel. Invite me there.',
  [NO_CHANNEL]: 'no channel is chosen for it. Choose one in the kitchen settings.',
  is_archived: 'the channel is archived. Unarchive it, or set another channel.',
  restricted_action:
    'the workspace does not let me post there. Ask an administrator, or set another channel.',
};
const CLOSED = 'restricted_action';

/** A sentence for staff when the channel itself takes no message any more; `undefined` for every other failure. */
export function channelTrouble(reason: string): string | undefined {
  const words = TROUBLES[reason.startsWith(CLOSED) ? CLOSED : reason];
  return words && `This could not be posted in its channel: ${words}`;
}
