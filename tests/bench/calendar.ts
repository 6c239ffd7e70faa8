import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { importCalendar } from '../../src/kitchen/games/import-calendar.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { openDatabase } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { newId } from '../../src/store/ids.ts';
import type { Row } from './row.ts';

const EVENTS = 5_000;
const MOST_MS = 2_000;
const OPPONENTS = ['Riverton', 'Mill Bay', 'Stone Bridge', 'Cedar Point', 'Grey Harbor'];

/** A calendar of 5,000 events read and kept whole, on SQLite, and on PostgreSQL when DATABASE_URL is set. */
export async function benchCalendar(kitchen: Kitchen): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'batchbell-bench-'));
  const rows = [await measured(kitchen, 'SQLite', join(folder, 'kitchen.db'))];
  rmSync(folder, { recursive: true });
  const url = process.env.DATABASE_URL;
  return url ? [...rows, await measured(kitchen, 'PostgreSQL', url)] : rows;
}

async function measured(kitchen: Kitchen, name: string, url: string): Promise<Row> {
  const database = await openDatabase(url);
  const games = gameBooksIn(database)(`bench-${newId(Date.now())}`);
  const bytes = season();
  try {
    const desk = { games, settings: kitchen.book.settings, nowMs: kitchen.clock.nowMs() };
    const start = performance.now();
    const result = await importCalendar(desk, bytes, { file: 'season.ics' });
    const took = performance.now() - start;
    if (result.counts.added !== EVENTS) throw new Error(`${result.counts.added} games were kept.`);
    await games.removeCalendar(result.calendar.id);
    return {
      what: `import of ${EVENTS} events, ${name}`,
      measured: `${Math.round(took)} ms`,
      beside: `${(bytes.length / 1024 / 1024).toFixed(1)} MB`,
      target: `under ${MOST_MS} ms`,
      met: took < MOST_MS,
    };
  } finally {
    await database.close();
  }
}

/** Events as feeds write them: a zone, a folded description, several sports. */
function season(): Buffer {
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0'];
  for (let i = 0; i < EVENTS; i++) {
    const day = new Date(Date.UTC(2026, 7, 1 + (i % 300))).toISOString().slice(0, 10).replaceAll('-', '');
    lines.push(
      'BEGIN:VEVENT',
      `UID:${i}@alderpoint.example`,
      'DTSTAMP:20260801T120000Z',
      `DTSTART;TZID=America/Chicago:${day}T${10 + (i % 10)}3000`,
      `DTEND;TZID=America/Chicago:${day}T${12 + (i % 10)}3000`,
      `SUMMARY:${i % 2 === 0 ? "Women's Soccer" : 'Volleyball'} ${i % 3 === 0 ? 'at' : 'vs'} ${OPPONENTS[i % OPPONENTS.length]} ${i}`,
      'LOCATION:North Field\\, Alder Point',
      'DESCRIPTION:Doors open one hour before the start. Bring the blue coolers and th',
      ' e second set of cold packs.\\nParking is behind the hall.',
      'END:VEVENT',
    );
  }
  return Buffer.from([...lines, 'END:VCALENDAR', ''].join('\r\n'));
}
