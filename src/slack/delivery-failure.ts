import { WebAPIPlatformError, WebAPIRateLimitedError } from '@slack/web-api';
import { DeliveryFailure } from '../kitchen/reminders/messenger.ts';
import { errorCode, retryAfterS } from './errors.ts';

/** Slack's own trouble, by its documented error names; of some of these it says that the call may have worked. */
const PASSING = new Set([
  'fatal_error',
  'internal_error',
  'request_timeout',
  'service_unavailable',
  'team_added_to_org',
]);
const LIMITED = new Set(['ratelimited', 'rate_limited', 'message_limit_exceeded']);
const LIMITED_PAUSE_MS = 60_000;

/** What a failed call to Slack means for a message: sent later, looked for first, or not taken at all. */
export function deliveryFailure(error: unknown): DeliveryFailure {
  const reason = errorCode(error);
  if (error instanceof WebAPIRateLimitedError) {
    return new DeliveryFailure({
      reason,
      outcome: 'not_sent',
      retryAfterMs: (retryAfterS(error) ?? LIMITED_PAUSE_MS / 1000) * 1000,
    });
  }
  if (!(error instanceof WebAPIPlatformError) || PASSING.has(reason)) {
    return new DeliveryFailure({ reason, outcome: 'unanswered' });
  }
  if (LIMITED.has(reason)) {
    return new DeliveryFailure({ reason, outcome: 'not_sent', retryAfterMs: LIMITED_PAUSE_MS });
  }
  return new DeliveryFailure({ reason, outcome: 'refused' });
}
