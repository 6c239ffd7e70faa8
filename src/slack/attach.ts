import type { WebClient } from '@slack/web-api';
import type { Attachment } from '../chat/answer.ts';
import { patiently } from './deliver.ts';
import { errorCode } from './errors.ts';
import type { Log } from './log.ts';
import type { Place } from './place.ts';

const TIMEOUT_MS = 20_000;

/** Files of an answer as files in Slack. */
export interface Attaching {
  /**
   * Puts the files where the answer goes: into its channel and thread, or to the asker directly when nobody else may read
   * it, for Slack has no file that one person of a channel sees. Says where they are; `undefined` when they are nowhere, and
   * the answer has to carry them as text.
   */
  attach(
    files: readonly Attachment[],
    to: { readonly place: Place; readonly client: WebClient; readonly isPublic: boolean },
  ): Promise<'here' | 'directly' | undefined>;
}

type Target = readonly [
  where: 'here' | 'directly',
  channel: () => Promise<string>,
  thread: string | undefined,
];

export function createAttaching(log: Log, wait: (ms: number) => Promise<void>): Attaching {
  async function uploaded({ fileName, content }: Attachment, client: WebClient): Promise<string> {
    const bytes = Buffer.from(content);
    const asked = { filename: fileName, length: bytes.length };
    const { upload_url: url, file_id: id } = await client.files.getUploadURLExternal(asked);
    const signal = AbortSignal.timeout(TIMEOUT_MS);
    const taken = await fetch(url ?? '', { method: 'POST', body: bytes, signal });
    await taken.body?.cancel();
    if (!taken.ok || id === undefined) throw new Error('the upload was not taken');
    return id;
  }

  async function share(
    files: readonly Attachment[],
    [, channelOf, thread]: Target,
    client: WebClient,
  ): Promise<void> {
    const channel = await channelOf();
    const ids: string[] = [];
    // Uploaded anew for each place tried: one that was not shared is Slack's to throw away.
    for (const file of files) ids.push(await uploaded(file, client));
    const [first = '', ...others] = ids;
    const all: [{ id: string }, ...{ id: string }[]] = [{ id: first }, ...others.map((id) => ({ id }))];
    const where = { channel_id: channel, ...(thread === undefined ? {} : { thread_ts: thread }) };
    await patiently(() => client.files.completeUploadExternal({ files: all, ...where }), wait);
  }

  return {
    async attach(files, { place, client, isPublic }) {
      for (const target of targetsOf(place, client, isPublic)) {
        try {
          await share(files, target, client);
          return target[0];
        } catch (error) {
          log.warn({ route: target[0], code: errorCode(error) }, 'files were not attached this way');
        }
      }
      return undefined;
    },
  };
}

/** Each next one reaches fewer people, never more. */
function targetsOf(place: Place, client: WebClient, isPublic: boolean): Target[] {
  const { channel, user, thread, isOwnDirectMessage } = place;
  const directly: Target = [
    'directly',
    async () => (await client.conversations.open({ users: user })).channel?.id ?? '',
    undefined,
  ];
  // A press on the home names the person instead of a channel.
  if (isOwnDirectMessage) return channel === user ? [directly] : [['here', async () => channel, thread]];
  return isPublic ? [['here', async () => channel, thread], directly] : [directly];
}
