import { expect, test } from 'vitest';
import type { ReminderPlaces } from '../../../src/kitchen/reminders/reminder.ts';
import { createTick } from '../../../src/kitchen/reminders/tick.ts';
import type { KitchenSettings } from '../../../src/nutrition/book.ts';
import { at, book, reminderKitchen } from '../../helpers/reminder-kitchen.ts';

test('settings changed while it runs move what is to come: the zone, the hours', async () => {
  const kitchen = await reminderKitchen();
  let settings: KitchenSettings = book.settings;
  const tick = createTick({ ...kitchen.parts, bookNow: async () => ({ ...book, settings }) });
  const { reminders } = kitchen.parts.books;
  await reminders.add(
    {
      key: 'own:soak',
      kind: 'own',
      audience: 'kitchen',
      about: { task: 'soak dates' },
      planned: false,
      dueMs: at('2026-12-03 15:00'),
      helpsUntilMs: at('2026-12-03 18:00'),
      wall: { date: '2026-12-03' as never, time: '15:00' as never, zone: book.settings.timeZone },
    },
    0,
  );
  const check = async () => {
    const upcoming = await reminders.upcoming(200);
    return upcoming.filter(({ kind }) => kind === 'stock_check').map(({ dueMs }) => dueMs)[0];
  };
  await tick(at('2026-12-02 12:00'));
  expect(await check()).toBe(at('2026-12-03 08:00'));

  settings = { ...settings, timeZone: 'America/Denver', stockCheckTime: '06:15' };
  await tick(at('2026-12-02 12:01'));
  expect(await check()).toBe(at('2026-12-03 06:15', 'America/Denver'));
  const own = await reminders.byKey('own:soak');
  expect(own?.dueMs).toBe(at('2026-12-03 15:00', 'America/Denver'));
  expect(kitchen.errors).toEqual([]);
  await kitchen.database.close();
});

test('what is told goes where staff chose, from the next look on', async () => {
  const kitchen = await reminderKitchen();
  let places: ReminderPlaces = {};
  const tick = createTick({ ...kitchen.parts, places: async () => places });
  await tick(at('2026-12-02 08:00'));
  expect(kitchen.channel.arrived.map(({ place }) => place)).toEqual([undefined]);
  kitchen.channel.read();
  places = { kitchen: 'C9' };
  await tick(at('2026-12-03 08:00'));
  expect(kitchen.channel.arrived.map(({ audience, place }) => [audience, place])).toContainEqual([
    'kitchen',
    'C9',
  ]);
  await kitchen.database.close();
});
