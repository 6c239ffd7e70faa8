import { spawnSync } from 'node:child_process';
import { loadedPackages } from './loaded-packages.ts';
import { median, type Row } from './row.ts';

const ROUNDS = 15;

const runMs = (argv: readonly string[]): number => {
  const start = performance.now();
  spawnSync(process.execPath, argv, { stdio: 'ignore', timeout: 30_000 });
  return performance.now() - start;
};

/** One request from a cold start, beside a bare process that loads the same packages; taken in turns. */
export function coldStart(main: string): Row {
  const packages = loadedPackages(main, ['40 oat bars']);
  const bare = packages.map((name) => `import ${JSON.stringify(name)};`).join('');
  const ours: number[] = [];
  const bares: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    ours.push(runMs([main, '40 oat bars']));
    bares.push(runMs(['--input-type=module', '-e', bare]));
  }
  const ratio = median(ours) / median(bares);
  return {
    what: 'start and answer "40 oat bars"',
    measured: `${Math.round(median(ours))} ms`,
    beside: `${Math.round(median(bares))} ms: node with ${packages.join(', ') || 'no package'}`,
    target: `${ratio.toFixed(2)} x (at most 2 x)`,
    met: ratio <= 2,
  };
}
