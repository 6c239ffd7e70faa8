import type { KitchenSettings } from '../../../nutrition/book.ts';
import type { Game } from '../../games/game.ts';
import type { Pack, PrepPlan } from '../../games/prep-plan.ts';
import { dateOf, instantOf } from '../../time/zone.ts';
import type { Reminder } from '../reminder.ts';
import type { NewReminder } from '../reminder-book.ts';
import { HOUR_MS } from './horizon.ts';

/** How long before packing somebody must know for how many: common practice, no source. */
const ASK_LEAD_MS = 48 * HOUR_MS;
/** How long a prep may stay unclaimed before it is said again, and once more before the dietitian hears of it. */
const UNCLAIMED_MS = HOUR_MS;
const PACK_HELPS_MS = 2 * HOUR_MS;

export interface GameState {
  readonly games: readonly Game[];
  readonly plans: readonly PrepPlan[];
  /** Told, not done, still of help. */
  readonly open: readonly Reminder[];
  readonly settings: KitchenSettings;
  readonly nowMs: number;
}

/** What games ask for: the prep, the packing, who does it, and a question while the plan lacks something. */
export function gameReminders(state: GameState): readonly NewReminder[] {
  const wanted = state.plans.flatMap((plan) => [
    ...(isUndecided(plan) ? [question(plan, state)] : []),
    ...(plan.pieces > 0 ? [prep(plan, state), ...followUps(plan, state)] : []),
    ...plan.packs.filter((pack) => pack.pieces > 0).map((pack) => packing(pack, plan, state)),
  ]);
  return wanted.filter((reminder) => reminder.helpsUntilMs > state.nowMs);
}

const isUndecided = (plan: PrepPlan): boolean => plan.wanted === undefined || plan.recipeId === undefined;

/** The day is in the name: a prep that moves to another day is told again, one that moves within the day only moves. */
export function prepKey(plan: PrepPlan, settings: KitchenSettings): string {
  return `prep:${plan.gameIds[0]}:${dateOf(plan.prepAtMs, settings.timeZone)}`;
}

function prep(plan: PrepPlan, { settings, nowMs }: GameState): NewReminder {
  return {
    key: prepKey(plan, settings),
    kind: 'prep',
    audience: 'kitchen',
    dueMs: Math.max(plan.prepAtMs, nowMs),
    helpsUntilMs: Math.max(plan.latestStartMs, plan.prepAtMs),
    about: { gameId: plan.gameIds[0] ?? '' },
    planned: true,
  };
}

function question(plan: PrepPlan, { nowMs }: GameState): NewReminder {
  return {
    key: `ask:${plan.gameIds[0]}`,
    kind: 'prep',
    audience: 'dietitian',
    dueMs: Math.max(plan.packAtMs - ASK_LEAD_MS, nowMs),
    helpsUntilMs: plan.packAtMs,
    about: { gameId: plan.gameIds[0] ?? '' },
    planned: true,
  };
}

/** Nobody took it: said once more, then to the dietitian; sooner when little time is left. */
function followUps(plan: PrepPlan, { open, settings }: GameState): NewReminder[] {
  const key = prepKey(plan, settings);
  const told = open.find((reminder) => reminder.key === key);
  if (told?.sentMs === undefined || told.takenBy !== undefined) return [];
  const stepMs = Math.min(UNCLAIMED_MS, Math.max(0, told.helpsUntilMs - told.sentMs) / 3);
  const about = { gameId: plan.gameIds[0] ?? '', repeats: told.code };
  const shared = { helpsUntilMs: told.helpsUntilMs, about, planned: true } as const;
  return [
    {
      ...shared,
      key: `again:${key}`,
      kind: 'prep',
      audience: 'kitchen',
      dueMs: Math.round(told.sentMs + stepMs),
    },
    {
      ...shared,
      key: `escalation:${key}`,
      kind: 'escalation',
      audience: 'dietitian',
      dueMs: Math.round(told.sentMs + 2 * stepMs),
    },
  ];
}

function packing(pack: Pack, plan: PrepPlan, { games, settings, nowMs }: GameState): NewReminder {
  const game = games.find(({ id }) => id === pack.gameId);
  const startMs =
    game?.time === undefined ? undefined : instantOf({ date: game.date, time: game.time }, game.timeZone);
  return {
    key: `pack:${pack.gameId}:${plan.recipeId ?? ''}:${dateOf(pack.packAtMs, settings.timeZone)}`,
    kind: 'pack',
    audience: 'kitchen',
    dueMs: Math.max(pack.packAtMs, nowMs),
    helpsUntilMs: Math.max(game?.departsMs ?? startMs ?? 0, pack.packAtMs + PACK_HELPS_MS),
    about: { gameId: pack.gameId },
    planned: true,
  };
}
