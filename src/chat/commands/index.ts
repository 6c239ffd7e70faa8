import type { Command } from '../command.ts';
import { allergens } from './allergens/index.ts';
import { balance } from './balance.ts';
import { cost } from './cost.ts';
import { counted } from './counted.ts';
import { emergency } from './emergency.ts';
import { fuel } from './fuel.ts';
import { game } from './game/index.ts';
import { createHelp } from './help.ts';
import { macros } from './macros/index.ts';
import { made } from './made/index.ts';
import { measure } from './measure/index.ts';
import { medical } from './medical.ts';
import { plan } from './plan.ts';
import { recipes } from './recipes/index.ts';
import { remind } from './remind/index.ts';
import { scale } from './scale/index.ts';
import { schedule } from './schedule/index.ts';
import { served } from './served/index.ts';
import { shop } from './shop.ts';
import { stock } from './stock/index.ts';
import { supplement } from './supplement.ts';
import { swap } from './swap/index.ts';
import { temperature } from './temperature/index.ts';
import { tossed } from './tossed.ts';
import { trace } from './trace/index.ts';
import { createUnknown } from './unknown.ts';

/** Every command, in the order help lists them. */
export const COMMANDS: readonly Command[] = [
  scale,
  measure,
  macros,
  recipes,
  swap,
  allergens,
  fuel,
  supplement,
  balance,
  plan,
  shop,
  cost,
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
  createHelp(() => COMMANDS),
  medical,
  emergency,
  createUnknown(() => COMMANDS),
];
