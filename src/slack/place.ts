/** Where an answer goes and who asked. */
export interface Place {
  readonly workspace: string;
  readonly channel: string;
  readonly user: string;
  /** The `ts` of the thread's first message; absent outside threads. */
  readonly thread?: string;
  /** A direct message with the bot: nobody else reads it. */
  readonly isOwnDirectMessage: boolean;
}

/** What a follow-up leans on: one person in one thread or channel of one workspace. */
export function conversationKey(place: Place): string {
  return [place.workspace, place.channel, place.thread ?? '', place.user].join(':');
}

const MARK = 'next';

/** A place as the id of the block of buttons, so that a press knows the thread even where Slack does not send it. */
export function blockIdOf(place: Place): string {
  return [MARK, place.isOwnDirectMessage ? 'dm' : 'channel', place.thread ?? ''].join('|');
}

/** The place of a press, from the block the button stood in. */
export function placeOfPress(blockId: string, press: Pick<Place, 'workspace' | 'channel' | 'user'>): Place {
  const [mark, kind, thread] = blockId.split('|');
  return {
    ...press,
    ...(mark === MARK && thread ? { thread } : {}),
    isOwnDirectMessage: mark === MARK && kind === 'dm',
  };
}
