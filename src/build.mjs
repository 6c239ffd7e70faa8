// Bundles our own code into dist/, packages left outside: a few files to read at start-up instead of a hundred.
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { build } from 'esbuild';

const entryPoints = { main: 'src/main.ts', 'pack-book': 'src/pack-book.ts' };
if (existsSync('tests/bench/main.ts')) entryPoints.bench = 'tests/bench/main.ts';

const { metafile } = await build({
  entryPoints,
  outdir: 'dist',
  bundle: true,
  splitting: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: true,
  // Less to parse at every start; names stay, so that a stack trace reads.
  minifyWhitespace: true,
  minifySyntax: true,
  logLevel: 'warning',
  metafile: true,
});

// Chunks are named by their content; those of earlier builds are never loaded again.
for (const file of readdirSync('dist')) {
  if (!(`dist/${file}` in metafile.outputs)) rmSync(`dist/${file}`, { recursive: true });
}

// The built-in recipes and foods, parsed and checked once here instead of at every start.
const { packBook } = await import('../dist/pack-book.js');
packBook('recipes', 'dist/book.json');
