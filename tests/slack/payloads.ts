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

const IN_STATE: Readonly<Record<string, (value: string) => object>> = {
  static_select: (value) => ({ selected_option: { value, text: { type: 'plain_text', text: value } } }),
  datepicker: (value) => ({ selected_date: value }),
  timepicker: (value) => ({ selected_time: value }),
  conversations_select: (value) => ({ selected_conversation: value }),
};

interface InputBlock {
  readonly block_id: string;
  readonly element: { readonly type: string; readonly action_id: string };
}

/** The state of a view whose inputs were filled in like this; a field not named is left empty. */
export function stateOf(blocks: readonly object[], filled: Readonly<Record<string, string | string[]>>) {
  const inputs = blocks.filter((block): block is InputBlock => 'element' in block);
  const missing = Object.keys(filled).filter((id) => !inputs.some((input) => input.block_id === id));
  if (missing.length > 0) throw new Error(`the form has no ${missing.join(', ')}`);
  return {
    values: Object.fromEntries(
      inputs.map(({ block_id: id, element: { type, action_id: action } }) => {
        const value = filled[id];
        const state = Array.isArray(value)
          ? { selected_options: value.map((each) => ({ value: each })) }
          : value === undefined
            ? { value: null }
            : (IN_STATE[type]?.(value) ?? { value });
        return [id, { [action]: { type, ...state } }];
      }),
    ),
  };
}

/** A view as Slack sends it back when somebody submits it. */
export const viewSubmission = (
  view: { blocks: readonly object[]; callback_id?: string; title?: object },
  filled: Readonly<Record<string, string | string[]>>,
  more: object = {},
) => ({
  type: 'view_submission',
  trigger_id: `trigger.${next()}`,
  team: { id: TEAM, domain: 'herons' },
  user: { id: STAFF, team_id: TEAM },
  api_app_id: 'A0',
  view: {
    id: 'V1',
    type: 'modal',
    title: { type: 'plain_text', text: 'A form' },
    ...view,
    state: stateOf(view.blocks, filled),
    hash: 'h1',
    private_metadata: '',
  },
  ...more,
});

export const shortcut = (callbackId: string, more: object = {}) => ({
  type: 'shortcut',
  callback_id: callbackId,
  trigger_id: `trigger.${next()}`,
  action_ts: '1789000003.0001',
  team: { id: TEAM, domain: 'herons' },
  user: { id: STAFF, username: 'somebody', team_id: TEAM },
  ...more,
});

/** A press on somebody's home. */
export const homePress = (action: object, user = STAFF) => ({
  type: 'block_actions',
  trigger_id: `trigger.${next()}`,
  team: { id: TEAM, domain: 'herons' },
  user: { id: user, team_id: TEAM },
  container: { type: 'view', view_id: 'V0' },
  view: { id: 'V0', type: 'home' },
  actions: [{ type: 'button', block_id: 'home|0', action_ts: `${next()}`, ...action }],
});

export const homeOpened = (user: string, more: object = {}) => ({
  type: 'app_home_opened',
  user,
  channel: 'D0HOME',
  tab: 'home',
  event_ts: '1789000004.0001',
  ...more,
});
