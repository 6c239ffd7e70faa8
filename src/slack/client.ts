import type { WebClientOptions } from '@slack/web-api';

/** A call that hangs longer has no reader left. */
const TIMEOUT_MS = 10_000;

/**
 * Options for one Web API client, a new object each time: clients write into theirs. No retries, because a retry of a post
 * whose answer was lost posts twice, and no waiting for rate limits, because that stalls every other channel: `deliver`
 * does both where it is harmless.
 */
export function clientOptions(apiUrl?: string): WebClientOptions {
  return {
    ...(apiUrl ? { slackApiUrl: apiUrl } : {}),
    retryConfig: { retries: 0 },
    rejectRateLimitedCalls: true,
    timeout: TIMEOUT_MS,
    fetch: fetchInTime,
  };
}

/**
 * Bolt answers response urls through this too, and sets no timeout there. The timer ends with the call: a signal that
 * times out by itself keeps what the call held alive for all of its time, and collecting that stalls acknowledgements.
 */
async function fetchInTime(...[url, init]: Parameters<typeof fetch>): Promise<Response> {
  if (init?.signal) return fetch(url, init);
  const controller = new AbortController();
  const timer = setTimeout(() => controller.abort(), TIMEOUT_MS);
  try {
    return await fetch(url, { ...init, signal: controller.signal });
  } finally {
    clearTimeout(timer);
  }
}
