import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { App, HTTPReceiver } from '@slack/bolt';
import { createChat } from '../../src/chat/chat.ts';
import { systemClock } from '../../src/clock.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { lazyMemory } from '../../src/open-memory.ts';
import { startSlack } from '../../src/slack/start.ts';
import { BOT, STAFF } from '../slack/payloads.ts';

/** What the parent measures: our service as it is started, on a database of its own, or the least a Bolt app can do (acknowledge, send the words back). */
const [, , mode, apiUrl = '', signingSecret = ''] = process.argv;

async function startOurs(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  const memory = lazyMemory(join(folder, 'kitchen.db'), () => systemClock.nowMs());
  const kitchen = await openKitchen(systemClock, undefined, memory);
  const chat = createChat({ ...kitchen, choices: memory.choices }, () => 'bench');
  const settings = { botToken: BOT.token, apiUrl, signingSecret, staff: [STAFF] };
  const parts = { settings, port: 0, host: '127.0.0.1', chat, clock: systemClock, logLevel: 'warn' };
  const shared = { memory: memory.workspaces([]), databaseAnswers: memory.answers };
  return (await startSlack({ ...parts, ...shared })).port;
}

async function startEcho(): Promise<number> {
  const receiver = new HTTPReceiver({ signingSecret });
  const app = new App({
    receiver,
    token: BOT.token,
    botId: BOT.botId,
    botUserId: BOT.botUserId,
    tokenVerificationEnabled: false,
    clientOptions: { slackApiUrl: apiUrl },
  });
  app.command('/kitchen', async ({ ack, command, respond }) => {
    await ack();
    await respond(command.text);
  });
  const server = await receiver.start({ port: 0, host: '127.0.0.1' });
  const address = server.address();
  return typeof address === 'object' && address ? address.port : 0;
}

process.on('message', () => process.send?.({ rss: process.memoryUsage().rss }));
for (const end of ['disconnect', 'SIGTERM'] as const) process.on(end, () => process.exit(0));
process.send?.({ port: mode === 'ours' ? await startOurs() : await startEcho() });
