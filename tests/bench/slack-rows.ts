import type { Row } from './row.ts';
import { type AckBenchOptions, benchSlackAcks } from './slack-acks.ts';

/** What a whole kitchen may cost over a bare echo. */
const MOST = { ack: 1.5, memory: 1.6, coldStart: 1.5 } as const;

/** Acknowledgements, memory and start of the Slack service, each beside a bare Bolt echo's in the same run. */
export async function slackRows(options: AckBenchOptions = {}): Promise<Row[]> {
  const bench = await benchSlackAcks(options);
  const ratio = (what: string, value: number, most: number, measured: string): Row => ({
    what,
    measured,
    beside: `${value.toFixed(2)} x a bare Bolt echo`,
    target: `at most ${most} x`,
    met: value <= most,
  });
  const ms = (value: number): string => `${value.toFixed(1)} ms`;
  return [
    ratio('Slack ack, p99', bench.p99Ratio, MOST.ack, `${ms(bench.oursMs.p99)}, p50 ${ms(bench.oursMs.p50)}`),
    ratio('Slack service, resident memory', bench.memoryRatio, MOST.memory, ''),
    ratio('Slack service, cold start', bench.coldStartRatio, MOST.coldStart, ''),
  ];
}
