import { type ChildProcess, spawn } from 'node:child_process';
import { builtProgram } from '../helpers/program.ts';
import { BOT, STAFF } from '../slack/payloads.ts';
import { SIGNING_SECRET } from './signed.ts';
import { pause, type SlackPeer } from './slack-peer.ts';

const main = new URL('../../dist/main.js', import.meta.url).pathname;

/** The built program as a process of its own, serving Slack. */
export interface Program {
  readonly child: ChildProcess;
  readonly url: string;
  readonly log: () => readonly Record<string, unknown>[];
  /** Its exit code, once it has ended. */
  readonly ended: Promise<number | null>;
}

/** Starts it with `argv` and waits until it serves. */
export async function startProgram(
  peer: SlackPeer,
  argv: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<Program> {
  await builtProgram();
  const child = spawn(process.execPath, [main, ...argv], {
    env: {
      ...process.env,
      SLACK_BOT_TOKEN: BOT.token,
      SLACK_SIGNING_SECRET: SIGNING_SECRET,
      SLACK_API_URL: peer.apiUrl,
      SLACK_STAFF: STAFF,
      PORT: '0',
      LOG_LEVEL: 'info',
      ...environment,
    },
  });
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  let printed = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (data) => (printed += String(data)));
  const log = () =>
    printed.split('\n').flatMap((line) => {
      try {
        return [JSON.parse(line) as Record<string, unknown>];
      } catch {
        return [];
      }
    });
  const serving = () => log().find(({ msg }) => msg === 'serving Slack');
  const end = performance.now() + 20_000;
  while (!serving()) {
    if (child.exitCode !== null || performance.now() > end) {
      child.kill('SIGKILL');
      throw new Error(`it does not serve: ${printed}`);
    }
    await pause(20);
  }
  return { child, url: `http://127.0.0.1:${String(serving()?.port)}`, log, ended };
}
