import type { IntentReader } from '../intent-reader.ts';
import { allergens } from './allergens.ts';
import { balance } from './balance.ts';
import { cost } from './cost.ts';
import { counted, served, tossed } from './counts.ts';
import { fuel } from './fuel.ts';
import { game, schedule } from './games.ts';
import { macros } from './macros.ts';
import { made } from './made.ts';
import { measure } from './measure.ts';
import { plan } from './plan.ts';
import { help, recipes, trace } from './records.ts';
import { remind } from './remind.ts';
import { scale } from './scale.ts';
import { settings } from './settings.ts';
import { shop } from './shop.ts';
import { stock } from './stock.ts';
import { supplement } from './supplement.ts';
import { swap } from './swap.ts';
import { temperature } from './temperature.ts';

/** Every intent that is chosen by its score. Emergency and medical are asked before these. */
export const INTENT_READERS: readonly IntentReader[] = [
  scale,
  measure,
  macros,
  swap,
  allergens,
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
  schedule,
  game,
  remind,
  fuel,
  supplement,
  trace,
  recipes,
  settings,
  help,
];
