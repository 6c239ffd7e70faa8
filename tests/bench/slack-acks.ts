import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { asForm, SIGNING_SECRET } from '../e2e/signed.ts';
import { pause, type SlackPeer, startSlackPeer } from '../e2e/slack-peer.ts';
import { command } from '../slack/payloads.ts';

export interface AckBench {
  /** Ours over a bare Bolt echo's, in the same run; 1 is equal. */
  readonly p50Ratio: number;
  readonly p99Ratio: number;
  readonly memoryRatio: number;
  readonly coldStartRatio: number;
  readonly oursMs: { readonly p50: number; readonly p99: number };
  readonly echoMs: { readonly p50: number; readonly p99: number };
  readonly requestsEach: number;
}

export interface AckBenchOptions {
  /** Of load on each of the two, at most 120. */
  readonly seconds?: number;
  readonly perSecond?: number;
}

interface Server {
  readonly child: ChildProcess;
  readonly url: string;
  readonly coldMs: number;
  readonly ackMs: number[];
}

/** Before the timing starts: both have compiled their hot paths. */
const WARM_UP = 200;

/**
 * How fast signed commands are acknowledged, ours beside a bare Bolt echo: two processes, loaded in turns of a second, so
 * that whatever else the machine does meets both.
 * @example await benchSlackAcks({ seconds: 10 })
 */
export async function benchSlackAcks(options: AckBenchOptions = {}): Promise<AckBench> {
  const seconds = Math.min(options.seconds ?? (Number(process.env.BENCH_SECONDS) || 10), 120);
  const perSecond = Math.min(options.perSecond ?? 200, 1_000);
  const peer = await startSlackPeer();
  const script = await childScript();
  const servers: Server[] = [];
  try {
    const ours = await startChild(script, 'ours', peer);
    servers.push(ours);
    const echo = await startChild(script, 'echo', peer);
    servers.push(echo);
    for (const server of servers) await load(server, peer, WARM_UP, perSecond);
    for (const server of servers) server.ackMs.length = 0;
    for (let second = 0; second < seconds; second += 1) {
      for (const server of second % 2 ? [ours, echo] : [echo, ours])
        await load(server, peer, perSecond, perSecond);
    }
    return await compare(ours, echo);
  } finally {
    for (const { child } of servers) child.kill();
    await peer.close();
    rmSync(script, { force: true });
  }
}

/** Our TypeScript as one file beside the other built ones, so that packages are found. */
async function childScript(): Promise<string> {
  const root = process.cwd();
  const outfile = join(root, 'dist', `slack-child-${process.pid}.js`);
  await build({
    entryPoints: [join(root, 'tests/bench/slack-child.ts')],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
  });
  return outfile;
}

async function startChild(script: string, mode: 'ours' | 'echo', peer: SlackPeer): Promise<Server> {
  const startedMs = performance.now();
  const child = fork(script, [mode, peer.apiUrl, SIGNING_SECRET], {
    env: { ...process.env, NODE_ENV: 'production' },
  });
  const [{ port }] = (await once(child, 'message')) as [{ port: number }];
  return {
    child,
    url: `http://127.0.0.1:${port}/slack/events`,
    coldMs: performance.now() - startedMs,
    ackMs: [],
  };
}

/** `count` commands, one every `1000 / perSecond` ms whatever the answers take; resolves when all are acknowledged. */
async function load(server: Server, peer: SlackPeer, count: number, perSecond: number): Promise<void> {
  const startedMs = performance.now();
  const sent: Promise<void>[] = [];
  for (let at = 0; at < count; at += 1) {
    const early = startedMs + (at * 1000) / perSecond - performance.now();
    if (early > 0) await pause(early);
    sent.push(ack(server, peer, at));
  }
  await Promise.all(sent);
  peer.calls.length = 0;
}

async function ack(server: Server, peer: SlackPeer, at: number): Promise<void> {
  const fields = command('40 oat bars', {
    user_id: `U${String(at % 50).padStart(6, '0')}`,
    response_url: peer.responseUrl,
  }) as Record<string, string>;
  const request = asForm(fields);
  const startedMs = performance.now();
  const response = await fetch(server.url, request);
  const tookMs = performance.now() - startedMs;
  await response.arrayBuffer();
  if (response.status !== 200) throw new Error(`a command was answered ${response.status}`);
  server.ackMs.push(tookMs);
}

async function compare(ours: Server, echo: Server): Promise<AckBench> {
  const [oursRss, echoRss] = [await memoryOf(ours.child), await memoryOf(echo.child)];
  const oursMs = { p50: share(ours.ackMs, 0.5), p99: share(ours.ackMs, 0.99) };
  const echoMs = { p50: share(echo.ackMs, 0.5), p99: share(echo.ackMs, 0.99) };
  return {
    p50Ratio: oursMs.p50 / echoMs.p50,
    p99Ratio: oursMs.p99 / echoMs.p99,
    memoryRatio: oursRss / echoRss,
    coldStartRatio: ours.coldMs / echo.coldMs,
    oursMs,
    echoMs,
    requestsEach: ours.ackMs.length,
  };
}

async function memoryOf(child: ChildProcess): Promise<number> {
  child.send('memory');
  const [{ rss }] = (await once(child, 'message')) as [{ rss: number }];
  return rss;
}

function share(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN;
}
