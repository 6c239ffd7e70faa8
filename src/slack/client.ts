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
    // Bolt answers response urls through this too, and sets no timeout there.
    fetch: (url, init) => fetch(url, { ...init, signal: init?.signal ?? AbortSignal.timeout(TIMEOUT_MS) }),
  };
}
