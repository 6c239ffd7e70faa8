export const TEAM = 'T0HERONS';
export const BOT = { token: 'xoxb-test', botId: 'B0BOT', botUserId: 'U0BOT', workspace: TEAM };
export const STAFF = 'U0STAFF';
export const ATHLETE = 'U0ATHLETE';
export const RESPONSE_URL = 'http://slack.test/commands/answer';

let count = 0;
const next = (): number => {
  count += 1;
  return count;
};

export const command = (text: string, more: object = {}) => ({
  command: '/kitchen',
  text,
  response_url: RESPONSE_URL,
  trigger_id: `trigger.${next()}`,
  user_id: ATHLETE,
  user_name: 'somebody',
  team_id: TEAM,
  team_domain: 'herons',
  channel_id: 'C0KITCHEN',
  channel_name: 'kitchen',
  api_app_id: 'A0',
  ...more,
});

export const eventBody = (event: object, more: object = {}) => ({
  type: 'event_callback',
  event_id: `Ev${next()}`,
  event_time: 1_789_000_000,
  team_id: TEAM,
  api_app_id: 'A0',
  authorizations: [{ team_id: TEAM, user_id: BOT.botUserId, is_bot: true, is_enterprise_install: false }],
  event,
  ...more,
});

export const mention = (text: string, more: object = {}) => ({
  type: 'app_mention',
  user: ATHLETE,
  text: `<@${BOT.botUserId}> ${text}`,
  ts: `1789000000.${next()}`,
  event_ts: '1789000000.0001',
  channel: 'C0KITCHEN',
  team: TEAM,
  ...more,
});

export const directMessage = (text: string, more: object = {}) => ({
  type: 'message',
  channel_type: 'im',
  user: ATHLETE,
  text,
  ts: `1789000001.${next()}`,
  event_ts: '1789000001.0001',
  channel: 'D0ATHLETE',
  team: TEAM,
  ...more,
});

export const press = (value: string, more: object = {}, blockId = 'next|channel|') => ({
  type: 'block_actions',
  trigger_id: `trigger.${next()}`,
  team: { id: TEAM, domain: 'herons' },
  user: { id: ATHLETE, team_id: TEAM },
  channel: { id: 'C0KITCHEN', name: 'kitchen' },
  container: { type: 'message', message_ts: '1789000002.0001', channel_id: 'C0KITCHEN', is_ephemeral: false },
  response_url: RESPONSE_URL,
  actions: [{ type: 'button', action_id: 'next_step_1', block_id: blockId, value, action_ts: `${next()}` }],
  ...more,
});
