import type { Command } from '../command.ts';
import type { Intent } from '../slots.ts';
import { allergens } from './allergens/index.ts';
import { balance } from './balance/index.ts';
import { cost } from './cost/index.ts';
import { counted } from './counted/index.ts';
import { fuel } from './fuel/index.ts';
import { game } from './game/index.ts';
import { macros } from './macros/index.ts';
import { made } from './made/index.ts';
import { measure } from './measure/index.ts';
import { plan } from './plan/index.ts';
import { recipes } from './recipes/index.ts';
import { remind } from './remind/index.ts';
import { schedule } from './schedule/index.ts';
import { served } from './served/index.ts';
import { settings } from './settings/index.ts';
import { shop } from './shop/index.ts';
import { stock } from './stock/index.ts';
import { supplement } from './supplement/index.ts';
import { swap } from './swap/index.ts';
import { temperature } from './temperature/index.ts';
import { tossed } from './tossed/index.ts';
import { trace } from './trace/index.ts';

/** The commands that are loaded when the first of them is asked; together, so that they share one file of the build. */
export const LATE: ReadonlyMap<Intent, Command> = new Map(
  [
    measure,
    macros,
    recipes,
    swap,
    allergens,
    balance,
    plan,
    cost,
    fuel,
    supplement,
    shop,
    stock,
    made,
    served,
    tossed,
    counted,
    temperature,
    trace,
    schedule,
    game,
    remind,
    settings,
  ].map((command) => [command.intent, command]),
);
