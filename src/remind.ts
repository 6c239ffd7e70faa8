import type { Kitchen } from './kitchen/kitchen.ts';
import type { Messenger } from './kitchen/reminders/messenger.ts';
import type { Scheduler } from './kitchen/reminders/scheduler.ts';
import type { Memory } from './open-memory.ts';

export interface RemindParts {
  readonly kitchen: Kitchen;
  readonly memory: Memory;
  readonly workspace: string;
  readonly messenger: Messenger;
  readonly report: (error: unknown) => void;
}

/** Starts the reminders of one workspace; they stop when the surface does. */
export async function startReminders(parts: RemindParts): Promise<Scheduler> {
  const { kitchen, memory, workspace, messenger, report } = parts;
  const [{ startScheduler }, { createTick }, { reminderComposer }] = await Promise.all([
    import('./kitchen/reminders/scheduler.ts'),
    import('./kitchen/reminders/tick.ts'),
    import('./chat/reminders/compose.ts'),
  ]);
  let stopping = false;
  const tick = createTick({
    book: kitchen.book,
    books: {
      ledger: kitchen.ledgers(workspace),
      games: kitchen.games(workspace),
      reminders: kitchen.reminders(workspace),
    },
    queue: memory.queues(workspace),
    composer: reminderComposer,
    messenger,
    report,
    isStopping: () => stopping,
  });
  const scheduler = await startScheduler(tick, kitchen.clock, report);
  return {
    ...scheduler,
    stop() {
      stopping = true;
      return scheduler.stop();
    },
  };
}
