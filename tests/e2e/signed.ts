import { createHmac } from 'node:crypto';

export const SIGNING_SECRET = 'a secret of this test';

export interface SignedOptions {
  /** Seconds to add to the timestamp. */
  readonly shiftS?: number;
  readonly secret?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly contentType?: string;
}

/** A request as Slack signs it: `v0=` and HMAC-SHA256 of `v0:timestamp:body` (Slack, "Verifying requests"). */
export function signedRequest(body: string, options: SignedOptions = {}): RequestInit & { body: string } {
  const stamp = String(Math.floor(Date.now() / 1000) + (options.shiftS ?? 0));
  const secret = options.secret ?? SIGNING_SECRET;
  const signature = createHmac('sha256', secret).update(`v0:${stamp}:${body}`).digest('hex');
  return {
    method: 'POST',
    headers: {
      'content-type': options.contentType ?? 'application/json',
      'x-slack-request-timestamp': stamp,
      'x-slack-signature': `v0=${signature}`,
      ...options.headers,
    },
    body,
  };
}

const FORM = 'application/x-www-form-urlencoded';

export const asEvent = (body: object, options: SignedOptions = {}) =>
  signedRequest(JSON.stringify(body), options);
export const asForm = (fields: Record<string, string>, options: SignedOptions = {}) =>
  signedRequest(new URLSearchParams(fields).toString(), { contentType: FORM, ...options });
export const asPress = (payload: object, options: SignedOptions = {}) =>
  asForm({ payload: JSON.stringify(payload) }, options);
