import type { IncomingMessage } from 'node:http';

/** As Slack's own check for the past, but for both sides: Bolt lets a timestamp of tomorrow pass. */
const FARTHEST_MS = 5 * 60_000;
/** Slack's own payloads stay far below. */
const LARGEST_BODY = 1024 * 1024;

/** What Bolt reads instead of the stream when it is there. */
type Buffered = IncomingMessage & { rawBody?: Buffer };

/** The HTTP status to refuse a request with, or `undefined` to hand it to Bolt, its body read. Bolt checks the signature. */
export async function refusal(request: Buffered, nowMs: number): Promise<number | undefined> {
  const stamp = request.headers['x-slack-request-timestamp'];
  if (stamp !== undefined && !isRecent(String(stamp), nowMs)) return 401;
  const body = await bodyOf(request);
  if (!body) return 413;
  request.rawBody = body;
  const type = (request.headers['content-type'] ?? '').split(';', 1)[0]?.trim().toLowerCase() ?? '';
  // Bolt knows a form only by the bare media type.
  request.headers['content-type'] = type;
  return isPayload(body.toString(), type) ? undefined : 400;
}

function isRecent(stamp: string, nowMs: number): boolean {
  return /^\d{1,12}$/.test(stamp) && Math.abs(Number(stamp) * 1000 - nowMs) <= FARTHEST_MS;
}

async function bodyOf(request: IncomingMessage): Promise<Buffer | undefined> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request) {
    length += chunk.length;
    if (length > LARGEST_BODY) return undefined;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

/** An object, as every payload of Slack is; anything else would throw inside Bolt where nobody catches it. */
function isPayload(body: string, type: string): boolean {
  if (type !== 'application/x-www-form-urlencoded') return isObject(body);
  const form = new URLSearchParams(body);
  const payload = form.get('payload');
  return payload === null ? form.has('command') || form.has('ssl_check') : isObject(payload);
}

function isObject(json: string): boolean {
  try {
    const value: unknown = JSON.parse(json);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
    return !('event' in value) || (typeof value.event === 'object' && value.event !== null);
  } catch {
    return false;
  }
}
