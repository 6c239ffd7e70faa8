import type { Kitchen } from './kitchen/kitchen.ts';
import type { Messenger } from './kitchen/reminders/messenger.ts';
import type { ReminderPlaces } from './kitchen/reminders/reminder.ts';
import type { Scheduler } from './kitchen/reminders/scheduler.ts';
import type { Tick } from './kitchen/reminders/tick.ts';
import { type KitchenHere, kitchensHere } from './kitchen/settings/kitchens-here.ts';
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
  const here = kitchensHere(kitchen, report);
  const [{ startScheduler }, { createTick }, { reminderComposer }] = await Promise.all([
    import('./kitchen/reminders/scheduler.ts'),
    import('./kitchen/reminders/tick.ts'),
    import('./chat/reminders/compose.ts'),
  ]);
  let stopping = false;
  const tick = createTick({
    book: kitchen.book,
    bookNow: async () => (await here(workspace)).book,
    places: () => placesIn(kitchen, workspace),
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
  const calendars = calendarReader(parts, here);
  const look: Tick = (nowMs) => {
    calendars.look(nowMs);
    return tick(nowMs);
  };
  const scheduler = await startScheduler(look, kitchen.clock, report);
  return {
    ...scheduler,
    async stop() {
      stopping = true;
      await scheduler.stop();
      await calendars.rest();
    },
  };
}

/** What the dietitian must know goes to the kitchen unless a channel of its own was chosen. */
async function placesIn({ choices }: Kitchen, workspace: string): Promise<ReminderPlaces> {
  const { kitchenChannel: kitchen, dietitianChannel } = (await choices?.(workspace).get()) ?? {};
  const dietitian = dietitianChannel ?? kitchen;
  return { ...(kitchen ? { kitchen } : {}), ...(dietitian ? { dietitian } : {}) };
}

/** Reads calendars again beside the tick: a slow address must not hold up a reminder. */
function calendarReader({ kitchen, workspace, report }: RemindParts, here: KitchenHere) {
  const fetchCalendar = kitchen.calendars?.fetch;
  let reading: Promise<unknown> | undefined;
  return {
    look(nowMs: number): void {
      if (!fetchCalendar || reading) return;
      const desk = {
        games: kitchen.games(workspace),
        fetchCalendar,
      };
      reading = Promise.all([import('./kitchen/games/calendar-news.ts'), here(workspace)])
        .then(([{ tellCalendarNews }, { book }]) =>
          tellCalendarNews({ ...desk, settings: book.settings }, nowMs),
        )
        .catch(report)
        .finally(() => {
          reading = undefined;
        });
    },
    rest: async (): Promise<void> => void (await reading),
  };
}
