import { spawnSync } from 'node:child_process';
import { isBuiltin } from 'node:module';

/** Reports every specifier that our own bundle imports, on file descriptor 3. */
const HOOK = `
import { writeSync } from 'node:fs';
export async function resolve(specifier, context, next) {
  if (context.parentURL?.includes('/dist/')) writeSync(3, specifier + '\\n');
  return next(specifier, context);
}`;
const REGISTER = `import { register } from 'node:module'; register(${JSON.stringify(`data:text/javascript,${encodeURIComponent(HOOK)}`)});`;

/** The packages a run of the built program really loads, found by watching one run. */
export function loadedPackages(main: string, argv: readonly string[]): string[] {
  const watched = spawnSync(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(REGISTER)}`, main, ...argv],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe'], timeout: 30_000 },
  );
  const specifiers = String(watched.output[3] ?? '').split('\n');
  return [...new Set(specifiers)].filter((name) => /^[@a-z]/.test(name) && !isBuiltin(name)).sort();
}
