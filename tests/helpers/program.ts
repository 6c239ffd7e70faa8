import { execFile, spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { text } from 'node:stream/consumers';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';

const root = new URL('../..', import.meta.url).pathname;
const main = join(root, 'dist/main.js');

const newestMs = (folder: string): number =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => statSync(join(folder, file)).mtimeMs)
    .reduce((newest, ms) => Math.max(newest, ms), 0);

/** Builds the program unless it is newer than every source. */
export async function builtProgram(): Promise<void> {
  if (existsSync(main) && statSync(main).mtimeMs > newestMs(join(root, 'src'))) return;
  await promisify(execFile)(process.execPath, ['src/build.mjs'], { cwd: root });
}

export interface Run {
  readonly stdout: string;
  readonly stderr: string;
  readonly code: number | null;
}

/** Runs the built program to its end, with `input` on stdin. */
export async function run(
  argv: readonly string[],
  input: string | Uint8Array | Iterable<Uint8Array> = '',
  nodeOptions: readonly string[] = [],
  cwd = root,
): Promise<Run> {
  const { SLACK_BOT_TOKEN: _token, FORCE_COLOR: _color, ...env } = process.env;
  const child = spawn(process.execPath, [...nodeOptions, main, ...argv], { cwd, env });
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  const given = typeof input === 'string' || input instanceof Uint8Array ? [Buffer.from(input)] : input;
  // The program may end without reading its input; that is for its exit code to say.
  const fed = pipeline(Readable.from(given), child.stdin).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_PREMATURE_CLOSE') throw error;
  });
  const [stdout, stderr, code] = await Promise.all([text(child.stdout), text(child.stderr), ended, fed]);
  return { stdout, stderr, code };
}
