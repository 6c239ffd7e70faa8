import { RespondError } from '@slack/bolt';
import {
  WebAPIHTTPError,
  WebAPIPlatformError,
  WebAPIRateLimitedError,
  WebAPIRequestError,
} from '@slack/web-api';

/** A failure of a call to Slack as a short word for the log: never a message, which may quote what was sent. */
export function errorCode(error: unknown): string {
  if (error instanceof WebAPIPlatformError) return error.data.error;
  if (error instanceof WebAPIRateLimitedError) return 'ratelimited';
  if (error instanceof WebAPIHTTPError) return `http_${error.statusCode}`;
  if (error instanceof WebAPIRequestError) return 'no_answer';
  if (error instanceof RespondError) return `respond_${error.statusCode}`;
  if (!(error instanceof Error)) return 'unknown';
  const { cause } = error;
  return cause instanceof Error && 'code' in cause ? String(cause.code) : error.name;
}

/** Seconds Slack asks us to wait, when that is what the failure says. */
export function retryAfterS(error: unknown): number | undefined {
  return error instanceof WebAPIRateLimitedError ? error.retryAfter : undefined;
}

/** Where in our code it broke; the first line of a stack quotes the message, which may hold a person's words. */
export const placeInCode = (error: unknown): string =>
  error instanceof Error ? (error.stack?.split('\n').slice(1, 4).join(' ').trim() ?? '') : '';
