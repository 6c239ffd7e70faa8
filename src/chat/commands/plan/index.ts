import { type ProductionPlan, productionPlan } from '../../../kitchen/production/production-plan.ts';
import { addDays } from '../../../kitchen/time/zone.ts';
import type { Asked, Command } from '../../command.ts';
import { todayOf } from '../../games/when.ts';
import { ifKept } from '../../if-kept.ts';
import { planHead } from './head.ts';
import { kept } from './kept.ts';
import { type Occasion, occasionMeant } from './occasion.ts';
import { planAnswer } from './plan-answer.ts';
import { type WhoEats, whoEats } from './who-eats.ts';

/** How far ahead games are looked for, in days. */
const AHEAD_DAYS = 400;

/** "plan Saturday 44 travelling 5 nut free 2 coeliac": counts only, nobody's code. */
export const plan: Command = {
  ...planHead,
  async answers(asked) {
    const { occasion, who, made } = await planned(asked);
    const answer = planAnswer(asked, occasion, who, made);
    return { answer, conversation: { ...asked.conversation, last: { intent: 'plan', slots: asked.slots } } };
  },
};

export interface Planned {
  readonly occasion: Occasion;
  readonly who: WhoEats;
  readonly made: ProductionPlan;
}

/** What a request for a plan asks to be made. Throws a Problem for a day or counts that cannot be meant. */
export async function planned(asked: Asked): Promise<Planned> {
  const { kitchen, request, slots } = asked;
  const { workspace } = request.asker;
  const today = todayOf(asked);
  const games = await ifKept(() => kitchen.games(workspace).between(today, addDays(today, AHEAD_DAYS)));
  const occasion = occasionMeant(asked, games ?? []);
  const who = whoEats(asked, occasion, await ifKept(() => kitchen.rosters(workspace).all()));
  const recipeId = typeof slots.recipe === 'string' ? slots.recipe : occasion.game?.recipeId;
  const made = await productionPlan({
    book: kitchen.book,
    eaters: who.eaters,
    date: occasion.date,
    packAtMs: occasion.packAtMs,
    nowMs: request.nowMs,
    ...(await kept(asked, occasion, games ?? [])),
    ...(recipeId === undefined ? {} : { recipeId }),
  });
  return { occasion, who, made };
}
