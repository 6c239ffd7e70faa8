import { WebAPIPlatformError } from '@slack/web-api';
import { Problem } from '../chat/problem.ts';
import { errorCode } from './errors.ts';

const WHERE: Readonly<Record<string, string>> = {
  SLACK_BOT_TOKEN:
    'Copy the Bot User OAuth Token (xoxb-…) from "OAuth & Permissions" of your app and restart.',
  SLACK_APP_TOKEN:
    'Make an app-level token (xapp-…) with the scope connections:write under "Basic Information" and restart.',
};

/** Why Slack did not let us in, in one sentence that names the variable; the token itself is never repeated. */
export function apiProblem(error: unknown, variable: string, apiUrl = 'https://slack.com/api/'): Problem {
  const code = errorCode(error);
  if (error instanceof WebAPIPlatformError) {
    return new Problem('bad_option', `${variable} was refused by Slack (${code}).`, WHERE[variable] ?? '');
  }
  return new Problem(
    'unavailable',
    `Slack could not be reached at ${new URL(apiUrl).host} (${code}).`,
    'Check the network, and SLACK_API_URL if it is set, and restart.',
  );
}
