import { WebClient } from '@slack/web-api';
import { Problem } from '../chat/problem.ts';
import { clientOptions } from './client.ts';
import { boltLogger, createLog, type Log } from './log.ts';
import { missingScopes } from './scopes.ts';
import { apiProblem } from './start-problems.ts';
import type { BotIdentity } from './workspaces/served.ts';

/**
 * Asks Slack whose token this is.
 * @throws Problem that names SLACK_BOT_TOKEN when Slack refuses it or it is no bot's.
 */
export async function identify(botToken: string, apiUrl: string | undefined, log: Log): Promise<BotIdentity> {
  const client = new WebClient(botToken, {
    ...clientOptions(apiUrl),
    logger: boltLogger(createLog('silent')),
  });
  const me = await client.auth.test().catch((error) => {
    throw apiProblem(error, 'SLACK_BOT_TOKEN', apiUrl);
  });
  if (!me.bot_id || !me.user_id || !me.team_id) {
    throw new Problem(
      'bad_option',
      'SLACK_BOT_TOKEN is not the token of a bot.',
      'Use the Bot User OAuth Token (xoxb-…) from "OAuth & Permissions" of your app.',
    );
  }
  const missing = missingScopes(me.response_metadata?.scopes);
  if (missing.length > 0) log.warn({ missing }, 'reinstall the app from the manifest: scopes are missing');
  return { token: botToken, botId: me.bot_id, botUserId: me.user_id, workspace: me.team_id };
}
