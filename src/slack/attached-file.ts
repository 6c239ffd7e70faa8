import type { WebClient } from '@slack/web-api';
import { Problem } from '../chat/problem.ts';
import type { Attached } from '../chat/request.ts';
import { MOST_BYTES } from '../kitchen/games/calendar/limits.ts';

/** What Slack says of a file in a message; of one shared from elsewhere it says only the id. */
export interface SharedFile {
  readonly id?: string;
  readonly name?: string | null;
  readonly mimetype?: string;
  readonly size?: number;
  readonly url_private?: string;
  readonly url_private_download?: string;
}

const TIMEOUT_MS = 20_000;
/** Where Slack keeps files; the token goes nowhere else. */
const SLACK_HOSTS = ['slack.com', 'slack-files.com', 'slack-gov.com'];
const MEGABYTE = 1024 * 1024;

/** The calendar among the files of a message, else the first file; opened only when a command asks for it. */
export function attachedFile(
  files: readonly SharedFile[] | undefined,
  client: WebClient,
): Attached | undefined {
  const file = files?.find(isCalendar) ?? files?.[0];
  if (!file) return undefined;
  const fileName = (file.name ?? '').trim() || 'a file';
  return {
    fileName,
    isCalendar: isCalendar(file),
    open: async () => download(await known(file, client), fileName, client),
  };
}

const isCalendar = ({ name, mimetype }: SharedFile): boolean =>
  /\.ics$/i.test(name ?? '') || mimetype === 'text/calendar';

async function known(file: SharedFile, client: WebClient): Promise<SharedFile> {
  if (file.url_private_download ?? file.url_private ?? !file.id) return file;
  const { file: found } = await client.files.info({ file: file.id ?? '' }).catch(() => ({ file: undefined }));
  return found ?? file;
}

async function download(file: SharedFile, fileName: string, client: WebClient): Promise<Uint8Array> {
  if ((file.size ?? 0) > MOST_BYTES) throw tooLarge(fileName, file.size ?? 0);
  const url = addressOf(file, client);
  if (!url) throw notHandedOver(fileName);
  const response = await fetch(url, {
    headers: { authorization: `Bearer ${client.token ?? ''}` },
    // Slack sends who may not read a file to its sign-in page; following it would read that page.
    redirect: 'manual',
    signal: AbortSignal.timeout(TIMEOUT_MS),
  }).catch(() => undefined);
  if (!response?.ok || !response.body) throw notHandedOver(fileName);
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of response.body) {
    length += chunk.length;
    if (length > MOST_BYTES) throw tooLarge(fileName, length);
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function addressOf(file: SharedFile, client: WebClient): URL | undefined {
  const text = file.url_private_download ?? file.url_private ?? '';
  if (!URL.canParse(text)) return undefined;
  const url = new URL(text);
  const isSlack = SLACK_HOSTS.some((host) => url.hostname === host || url.hostname.endsWith(`.${host}`));
  const isApi = client.slackApiUrl !== undefined && url.origin === new URL(client.slackApiUrl).origin;
  return (isSlack && url.protocol === 'https:') || isApi ? url : undefined;
}

const tooLarge = (fileName: string, bytes: number): Problem =>
  new Problem(
    'bad_file',
    `${fileName} is ${(bytes / MEGABYTE).toFixed(1)} MB; I read calendars up to ${MOST_BYTES / MEGABYTE} MB.`,
    'Export one season or one sport at a time.',
  );

const notHandedOver = (fileName: string): Problem =>
  new Problem(
    'unavailable',
    `Slack did not hand over ${fileName}; nothing was imported.`,
    'Send it again; if it stays, reinstall the app from its manifest, for it needs files:read.',
  );
