import type { RespondFn } from '@slack/bolt';
import type { Clock } from '../kitchen/kitchen.ts';

/** Slack takes so many answers at one response url, and none after half an hour. */
const MOST_USES = 5;
const LONGEST_MS = 30 * 60_000;

/** The response url has been used as often or as long as Slack lets it: there are other ways to the person. */
export class ResponseUrlSpent extends Error {
  override readonly name = 'ResponseUrlSpent';
}

/** The same, refused here once Slack would refuse it: throws `ResponseUrlSpent` instead of asking. */
export function withinAllowance(respond: RespondFn, clock: Clock): RespondFn {
  const untilMs = clock.nowMs() + LONGEST_MS;
  let left = MOST_USES;
  return async (message) => {
    if (left <= 0 || clock.nowMs() >= untilMs) throw new ResponseUrlSpent();
    left -= 1;
    return respond(message);
  };
}
