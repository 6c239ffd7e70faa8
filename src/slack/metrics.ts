import type { Clock } from '../kitchen/kitchen.ts';

/** What is counted while serving: how much and how fast, never who or what about. */
export interface Metrics {
  answered(intent: string, route: string, ms: number): void;
  /** A payload that was answered before, here or by another instance. */
  repeated(): void;
  /** A request turned away before it reached the app, by HTTP status. */
  refused(status: number): void;
  /** Slack asked us to wait before the next call. */
  rateLimited(): void;
  socketOpened(): void;
  socketClosed(): void;
  /** Seconds since the last socket closed; 0 while there is one. */
  withoutSocketS(): number;
  /** In Prometheus's text format. */
  page(): Promise<{ readonly type: string; readonly text: string }>;
}

type Instruments = Awaited<ReturnType<typeof loadInstruments>>;
type Observation = (instruments: Instruments) => void;

/** So many observations wait for the first scrape; the next one loads the library without it. */
const MOST_WAITING = 10_000;

/** Counts from the start on; the library that keeps and prints the numbers is loaded when they are first asked for. */
export function createMetrics(clock: Clock): Metrics {
  const waiting: Observation[] = [];
  let loading: Promise<Instruments> | undefined;
  let instruments: Instruments | undefined;
  let socketClosedMs: number | undefined;
  let withoutSocketMs = 0;
  let hadSocket = false;

  const observe = (observation: Observation): void => {
    if (instruments) observation(instruments);
    else waiting.push(observation);
    if (waiting.length > MOST_WAITING) void load();
  };
  const withoutSocketS = (): number =>
    socketClosedMs === undefined ? 0 : (clock.nowMs() - socketClosedMs) / 1000;

  const load = async (): Promise<Instruments> => {
    loading ??= loadInstruments(() => withoutSocketMs / 1000 + withoutSocketS());
    instruments ??= await loading;
    for (const observation of waiting.splice(0)) observation(instruments);
    return instruments;
  };

  return {
    answered: (intent, route, ms) => observe(({ answers }) => answers.observe({ intent, route }, ms / 1000)),
    repeated: () => observe(({ repeated }) => repeated.inc()),
    refused: (status) => observe(({ refused }) => refused.inc({ status: String(status) })),
    rateLimited: () => observe(({ rateLimited }) => rateLimited.inc()),
    socketOpened() {
      if (socketClosedMs !== undefined) withoutSocketMs += clock.nowMs() - socketClosedMs;
      if (hadSocket) observe(({ sockets }) => sockets.inc());
      hadSocket = true;
      socketClosedMs = undefined;
    },
    socketClosed() {
      socketClosedMs ??= clock.nowMs();
    },
    withoutSocketS,
    async page() {
      const { registry } = await load();
      return { type: registry.contentType, text: await registry.metrics() };
    },
  };
}

async function loadInstruments(withoutSocketS: () => number) {
  const { Registry, Counter, Gauge, Histogram } = await import('prom-client');
  const registry = new Registry();
  const registers = [registry];
  const gauge = (name: string, help: string, value: () => number) =>
    new Gauge({
      name,
      help,
      registers,
      collect() {
        this.set(value());
      },
    });
  gauge('process_resident_memory_bytes', 'Resident memory.', () => process.memoryUsage.rss());
  gauge('process_uptime_seconds', 'Seconds since the process started.', () => process.uptime());
  gauge(
    'batchbell_without_socket_seconds',
    'Seconds spent without a Socket Mode connection since the start, the present gap included.',
    withoutSocketS,
  );
  return {
    registry,
    answers: new Histogram({
      name: 'batchbell_answer_seconds',
      help: 'From reading a request to the answer being with Slack, by intent and the way it went.',
      labelNames: ['intent', 'route'],
      buckets: [0.025, 0.05, 0.1, 0.25, 0.5, 1, 3, 10, 30],
      registers,
    }),
    repeated: new Counter({
      name: 'batchbell_repeated_total',
      help: 'Payloads that had been answered before.',
      registers,
    }),
    refused: new Counter({
      name: 'batchbell_refused_total',
      help: 'Requests turned away before they reached the app.',
      labelNames: ['status'],
      registers,
    }),
    rateLimited: new Counter({
      name: 'batchbell_rate_limited_total',
      help: 'Calls that Slack asked us to make later.',
      registers,
    }),
    sockets: new Counter({
      name: 'batchbell_socket_reconnects_total',
      help: 'Socket Mode connections opened after the first.',
      registers,
    }),
  };
}
