// Bundles our own code into dist/, packages left outside: one file to read at start-up instead of a hundred.
import { existsSync } from 'node:fs';
import { build } from 'esbuild';

const entryPoints = { main: 'src/main.ts' };
if (existsSync('tests/bench/main.ts')) entryPoints.bench = 'tests/bench/main.ts';

await build({
  entryPoints,
  outdir: 'dist',
  bundle: true,
  splitting: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: true,
  logLevel: 'warning',
});
