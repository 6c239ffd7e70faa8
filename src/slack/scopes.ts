/** The bot scopes this app needs and why; the manifest asks for these and for nothing else. */
export const SCOPES: Readonly<Record<string, string>> = {
  commands: 'the /kitchen command',
  'app_mentions:read': 'answering where the bot is mentioned, threads included',
  'chat:write': 'answering mentions and direct messages, and where a command cannot be answered directly',
  'channels:history':
    'finding a reminder again in a public channel: before it is sent twice, and to show in it what was said of it',
  'groups:history': 'the same, in a private channel',
  'im:history': 'reading what people write to the bot in a direct message',
  'im:write':
    'sending somebody a file directly, and finding there what staff were told of a reminder whose channel is gone',
  'files:read': 'reading the calendar or roster somebody sends to be imported',
  'files:write': 'attaching the temperature log, the schedule and labels as files',
  'usergroups:read': 'who of the workspace is kitchen staff or intern, by user group',
  'users:read': 'telling members from guests, who get public recipe facts only',
};

/** Scopes a token lacks; none when Slack did not say which it has. */
export function missingScopes(granted: readonly string[] | undefined): string[] {
  return granted ? Object.keys(SCOPES).filter((scope) => !granted.includes(scope)) : [];
}
