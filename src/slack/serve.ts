import { type StartParts, startSlack } from './start.ts';

/** Serves Slack until the process is asked to stop; then finishes what was acknowledged. */
export async function serveSlack(parts: StartParts): Promise<void> {
  const service = await startSlack(parts);
  await new Promise<void>((resolve) => {
    process.once('SIGTERM', () => resolve());
    process.once('SIGINT', () => resolve());
  });
  await service.stop();
}
