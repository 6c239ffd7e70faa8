import type { WebClient } from '@slack/web-api';
import { Problem } from '../chat/problem.ts';
import type { Attached } from '../chat/request.ts';
import { MOST_BYTES as MOST_OF_CALENDAR } from '../kitchen/games/calendar/limits.ts';
import { MOST_BYTES as MOST_OF_ROSTER } from '../kitchen/roster/limits.ts';

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

type Kind = Attached['kind'];

/** What is read of a file at most, and what is said of one that holds more. */
const LIMITS: Readonly<Record<Kind, readonly [bytes: number, name: string, hint: string]>> = {
  calendar: [MOST_OF_CALENDAR, 'calendars', 'Export one season or one sport at a time.'],
  table: [MOST_OF_ROSTER, 'rosters', 'Give one line a person, and only the people the kitchen feeds.'],
  other: [MOST_OF_CALENDAR, 'calendars', 'Send a schedule as .ics or a roster as .csv.'],
};

/** The calendar or table among the files of a message, else the first file; opened only when a command asks for it. */
export function attachedFile(
  files: readonly SharedFile[] | undefined,
  client: WebClient,
): Attached | undefined {
  const file = files?.find((each) => kindOf(each) !== 'other') ?? files?.[0];
  if (!file) return undefined;
  const kind = kindOf(file);
  const fileName = (file.name ?? '').trim() || 'a file';
  return {
    fileName,
    kind,
    open: async () => download(await known(file, client), fileName, kind, client),
  };
}

function kindOf({ name, mimetype }: SharedFile): Kind {
  if (/\.ics$/i.test(name ?? '') || mimetype === 'text/calendar') return 'calendar';
  return /\.csv$/i.test(name ?? '') || mimetype === 'text/csv' ? 'table' : 'other';
}

async function known(file: SharedFile, client: WebClient): Promise<SharedFile> {
  if (file.url_private_download ?? file.url_private ?? !file.id) return file;
  const { file: found } = await client.files.info({ file: file.id ?? '' }).catch(() => ({ file: undefined }));
  return found ?? file;
}

async function download(
  file: SharedFile,
  fileName: string,
  kind: Kind,
  client: WebClient,
): Promise<Uint8Array> {
  const [most] = LIMITS[kind];
  if ((file.size ?? 0) > most) throw tooLarge(fileName, kind, file.size ?? 0);
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
    if (length > most) throw tooLarge(fileName, kind, length);
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

function tooLarge(fileName: string, kind: Kind, bytes: number): Problem {
  const [most, name, hint] = LIMITS[kind];
  const size = (bytes / MEGABYTE).toFixed(1);
  return new Problem(
    'bad_file',
    `${fileName} is ${size} MB; I read ${name} up to ${most / MEGABYTE} MB.`,
    hint,
  );
}

const notHandedOver = (fileName: string): Problem =>
  new Problem(
    'unavailable',
    `Slack did not hand over ${fileName}; nothing was imported.`,
    'Send it again; if it stays, reinstall the app from its manifest, for it needs files:read.',
  );
