import { createLog } from './log.ts';
import { type StartParts, startSlack } from './start.ts';

/** What a graceful stop may take, all of it; a container is killed soon after. */
const LONGEST_STOP_MS = 9_500;
/** The exit code of a stop that left something unfinished. */
export const UNFINISHED = 3;

/**
 * Serves Slack until the process is asked to stop; then finishes what was acknowledged. Whatever hangs, the process ends within
 * ten seconds, or at once when it is asked twice, and its log says what was left. Resolves with the exit code.
 */
export async function serveSlack(parts: StartParts): Promise<number> {
  const log = parts.log ?? createLog(parts.logLevel);
  const service = await startSlack({ ...parts, log });
  await askedToStop();
  const end = (why: string): never => {
    log.error({ unfinished: service.unfinished() }, why);
    process.exit(UNFINISHED);
  };
  void askedToStop().then(() => end('stopped at once: asked twice'));
  // What is closed after us, such as the database, may hang too: the timer runs until the process ends.
  setTimeout(() => end('stopped by force'), LONGEST_STOP_MS).unref();
  return (await service.stop()) ? 0 : UNFINISHED;
}

function askedToStop(): Promise<void> {
  return new Promise((resolve) => {
    const asked = (): void => {
      process.off('SIGTERM', asked).off('SIGINT', asked);
      resolve();
    };
    process.on('SIGTERM', asked).on('SIGINT', asked);
  });
}
