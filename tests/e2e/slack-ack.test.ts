import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  command,
  directMessage,
  eventBody,
  homeOpened,
  homePress,
  mention,
  press,
  STAFF,
  shortcut,
  TEAM,
  viewSubmission,
} from '../slack/payloads.ts';
import { screensOf, type View } from './screens.ts';
import { type Mode, startWhole, type WholeService } from './whole-service.ts';

/** What Slack waits for, and what we leave of it for the network. */
const LONGEST_MS = 2_500;
const STALLED = [
  'users.info',
  'respond',
  'chat.postMessage',
  'chat.postEphemeral',
  'chat.update',
  'conversations.history',
  'conversations.open',
  'views.open',
  'views.update',
  'views.publish',
  'files.getUploadURLExternal',
];

describe.each<Mode>(['http', 'socket'])('while Slack answers none of our calls, over %s', (mode) => {
  let whole: WholeService;
  let view: View;
  beforeAll(async () => {
    whole = await startWhole(mode);
    view = await screensOf(whole).opened('batch');
    // Nobody's role is remembered any more.
    whole.clock.now += 2 * 60_000;
    for (const method of STALLED) whole.peer.stalls.add(method);
  });
  afterAll(() => whole.stop());

  const user = { user: { id: STAFF, team_id: TEAM } };
  const acked: readonly (readonly [string, () => Promise<unknown>])[] = [
    ['a command', () => whole.command(command('40 oat bars', { user_id: STAFF }))],
    ['a mention', () => whole.event(eventBody(mention('temperature log', { user: STAFF })))],
    ['a direct message', () => whole.event(eventBody(directMessage('stock')))],
    ['an opened home', () => whole.event(eventBody(homeOpened(STAFF)))],
    ['a follow-up', () => whole.interact(press('macros oat bars', user))],
    ['a button that opens a form', () => whole.interact(homePress({ action_id: 'form_game', value: '{}' }))],
    ['a shortcut', () => whole.interact(shortcut('form_reading'))],
    [
      'a form filled in',
      () =>
        whole.interact(viewSubmission({ ...view, id: 'VACK' } as never, { recipe: 'oat-bars', pieces: '7' })),
    ],
  ];
  test.each(acked)('%s is acknowledged in time', async (_, send) => {
    const fromMs = performance.now();
    await send();
    expect(performance.now() - fromMs).toBeLessThan(LONGEST_MS);
  });
});
