import { fileURLToPath } from 'node:url';
import { tableLines } from '../../src/chat/text-table.ts';
import { systemClock } from '../../src/clock.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import { answerRate } from './answer-rate.ts';
import { balanceRate } from './balance.ts';
import { benchCalendar } from './calendar.ts';
import { coldStart } from './cold-start.ts';
import { planRate } from './plan.ts';
import type { Row } from './row.ts';
import { slackRows } from './slack-rows.ts';
import { benchStock } from './stock.ts';
import { swapSearch } from './swap-search.ts';
import { benchTick } from './tick.ts';

/** Prints one table of what was measured in this run; writes nothing. Exit code 1 when a target is missed. */
async function bench(): Promise<void> {
  const kitchen = await openKitchen(systemClock);
  const main = fileURLToPath(new URL('main.js', import.meta.url));
  const rows: Row[] = [
    await answerRate(kitchen),
    await swapSearch(kitchen),
    await balanceRate(kitchen),
    await planRate(kitchen),
    coldStart(main),
    ...(await benchStock(kitchen)),
    ...(await benchCalendar(kitchen)),
    ...(await benchTick(kitchen)),
    ...(await slackRows()),
  ];
  const columns = ['What', 'Measured', 'Beside', 'Target', 'Met'].map((name) => ({
    name,
    align: 'left' as const,
  }));
  const cells = rows.map(({ what, measured, beside, target, met }) => [
    what,
    measured,
    beside,
    target,
    met ? 'yes' : 'NO',
  ]);
  process.stdout.write(`${tableLines(columns, cells, 150).join('\n')}\n`);
  process.exitCode = rows.every(({ met }) => met) ? 0 : 1;
}

await bench();
