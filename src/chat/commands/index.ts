import type { Command } from '../command.ts';
import { allergensHead } from './allergens/head.ts';
import { balanceHead } from './balance/head.ts';
import { costHead } from './cost/head.ts';
import { countedHead } from './counted/head.ts';
import { emergency } from './emergency.ts';
import { fuelHead } from './fuel/head.ts';
import { gameHead } from './game/head.ts';
import { createHelp } from './help.ts';
import { late } from './late.ts';
import { macrosHead } from './macros/head.ts';
import { madeHead } from './made/head.ts';
import { measureHead } from './measure/head.ts';
import { medical } from './medical.ts';
import { planHead } from './plan/head.ts';
import { recipesHead } from './recipes/head.ts';
import { remindHead } from './remind/head.ts';
import { scale } from './scale/index.ts';
import { scheduleHead } from './schedule/head.ts';
import { servedHead } from './served/head.ts';
import { settingsHead } from './settings/head.ts';
import { shopHead } from './shop/head.ts';
import { stockHead } from './stock/head.ts';
import { supplementHead } from './supplement/head.ts';
import { swapHead } from './swap/head.ts';
import { temperatureHead } from './temperature/head.ts';
import { tossedHead } from './tossed/head.ts';
import { traceHead } from './trace/head.ts';
import { createUnknown } from './unknown.ts';

/** Every command, in the order help lists them. */
export const COMMANDS: readonly Command[] = [
  scale,
  late(measureHead),
  late(macrosHead),
  late(recipesHead),
  late(swapHead),
  late(allergensHead),
  late(fuelHead),
  late(supplementHead),
  late(balanceHead),
  late(planHead),
  late(shopHead),
  late(costHead),
  late(stockHead),
  late(madeHead),
  late(servedHead),
  late(tossedHead),
  late(countedHead),
  late(temperatureHead),
  late(traceHead),
  late(scheduleHead),
  late(gameHead),
  late(remindHead),
  late(settingsHead),
  createHelp(() => COMMANDS),
  medical,
  emergency,
  createUnknown(() => COMMANDS),
];
