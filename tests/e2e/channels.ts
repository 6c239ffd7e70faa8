/** What stands in the channels of a local Slack. */
export interface Channels {
  post(body: Record<string, unknown>): object;
  update(body: Record<string, unknown>): object;
  /** As `conversations.history` bounds it; latest first. */
  between(body: Record<string, unknown>): object[];
  upload(origin: string): object;
}

interface Posted {
  readonly channel: string;
  readonly ts: string;
  readonly message: Record<string, unknown>;
}

/** The direct message with somebody. */
export const directWith = (user: string): string => (/^[UW]/.test(user) ? `D${user.slice(1)}` : user);

export function createChannels(): Channels {
  let posted: Posted[] = [];
  let count = 0;
  let files = 0;
  return {
    post({ channel, ...message }) {
      count += 1;
      const ts = `1789000009.${String(count).padStart(4, '0')}`;
      const where = directWith(String(channel));
      posted.unshift({ channel: where, ts, message });
      return { channel: where, ts };
    },
    update({ channel, ts, ...message }) {
      const isIt = (one: Posted) => one.channel === channel && one.ts === ts;
      if (!posted.some(isIt)) return { ok: false, error: 'message_not_found' };
      posted = posted.map((one) => (isIt(one) ? { ...one, message } : one));
      return {};
    },
    between({ channel, oldest = '0', latest = '9999999999', limit = 100 }) {
      return posted
        .filter((one) => one.channel === channel)
        .filter(({ ts }) => Number(ts) >= Number(oldest) && Number(ts) <= Number(latest))
        .slice(0, Number(limit))
        .map(({ ts, message }) => ({ ts, ...message }));
    },
    upload(origin) {
      files += 1;
      return { upload_url: `${origin}/upload/F${files}`, file_id: `F${files}` };
    },
  };
}
