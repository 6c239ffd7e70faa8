import type { RespondFn } from '@slack/bolt';
import type { WebClient } from '@slack/web-api';
import type { Message } from './blocks/message.ts';
import { errorCode, retryAfterS } from './errors.ts';
import type { Log } from './log.ts';
import type { Place } from './place.ts';

/** Ways to reach the place a request came from. */
export interface Reach {
  readonly place: Place;
  readonly client: WebClient;
  /** Of commands and presses; works also where the bot is not a member. */
  readonly respond?: RespondFn;
}

export interface Delivery {
  readonly message: Message;
  /** Everyone in the channel may read it. */
  readonly isPublic: boolean;
}

type Route = readonly [name: string, send: () => Promise<unknown>];
type Wait = (ms: number) => Promise<void>;

/** Longer than this a person has given up; the next way is tried at once. */
const LONGEST_WAIT_S = 20;
const QUIET = { unfurl_links: false, unfurl_media: false, parse: 'none', link_names: false } as const;

/**
 * Sends a message the first way that works; each later way reaches fewer people, never more, so that nothing private turns
 * public by a failure. Returns the way that worked, or `undefined` when none did.
 */
export async function deliver(
  delivery: Delivery,
  reach: Reach,
  log: Log,
  wait: Wait,
): Promise<string | undefined> {
  for (const [name, send] of routesOf(delivery, reach)) {
    try {
      await patiently(send, wait);
      return name;
    } catch (error) {
      log.warn({ route: name, code: errorCode(error) }, 'a reply did not go this way');
    }
  }
  log.error({ workspace: reach.place.workspace }, 'a reply could not be delivered');
  return undefined;
}

function routesOf({ message, isPublic }: Delivery, { place, client, respond }: Reach): Route[] {
  const { channel, user, thread } = place;
  const inThread = thread ? { thread_ts: thread } : {};
  const sent = { ...message, ...QUIET };
  const post: Route = ['post', () => client.chat.postMessage({ channel, ...inThread, ...sent })];
  if (place.isOwnDirectMessage)
    return [post, ['direct', () => client.chat.postMessage({ channel: user, ...sent })]];
  const { text, blocks } = message;
  const answering = (response_type: 'in_channel' | 'ephemeral') => async () =>
    respond?.({
      text,
      blocks,
      response_type,
      replace_original: false,
      unfurl_links: false,
      unfurl_media: false,
    });
  const canRespond = respond !== undefined && thread === undefined;
  return [
    ...(isPublic ? [canRespond ? (['respond_in_channel', answering('in_channel')] as const) : post] : []),
    ...(canRespond ? [['respond', answering('ephemeral')] as const] : []),
    ['ephemeral', () => client.chat.postEphemeral({ channel, user, ...inThread, ...withoutUnfurls(sent) })],
    ['direct', () => client.chat.postMessage({ channel: user, ...sent })],
  ];
}

/** `chat.postEphemeral` knows no unfurling. */
function withoutUnfurls({ unfurl_links: _links, unfurl_media: _media, ...rest }: Message & typeof QUIET) {
  return rest;
}

/** Waits as long as Slack asks, once. */
export async function patiently(send: () => Promise<unknown>, wait: Wait): Promise<void> {
  try {
    await send();
  } catch (error) {
    const seconds = retryAfterS(error);
    if (seconds === undefined || seconds > LONGEST_WAIT_S) throw error;
    await wait(seconds * 1000);
    await send();
  }
}
