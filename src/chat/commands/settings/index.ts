import { type Choices, checkedChoices } from '../../../kitchen/settings/choices.ts';
import { withChoices } from '../../../kitchen/settings/with-choices.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Answered, Asked, Command } from '../../command.ts';
import { choicesIn } from './choices-in.ts';
import { settingsHead } from './head.ts';
import { settingsAnswer } from './settings-answer.ts';

/** How the kitchen works: shown, and changed by staff. A change counts from the next request and reminder on. */
export const settings: Command = {
  ...settingsHead,
  async answers(asked) {
    const chosen = choicesIn(asked.slots);
    return Object.keys(chosen).length > 0 ? change(asked, chosen) : show(asked);
  },
};

async function show(asked: Asked): Promise<Answered> {
  const { kitchen, request } = asked;
  const before = (await kitchen.choices?.(request.asker.workspace).get()) ?? {};
  return { answer: settingsAnswer(asked, kitchen.book.settings, before, []) };
}

async function change(asked: Asked, chosen: ReturnType<typeof choicesIn>): Promise<Answered> {
  const { kitchen, request } = asked;
  const book = kitchen.choices?.(request.asker.workspace);
  if (!book) {
    throw new Problem(
      'not_possible',
      'Settings are changed in the workspace.',
      'Here, change kitchen.yaml in the kitchen folder and start again.',
    );
  }
  const before = await book.get();
  const after = checkedChoices(withoutEmpty({ ...before, ...chosen }));
  const changed = (Object.keys({ ...before, ...after }) as (keyof Choices)[]).filter(
    (name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]),
  );
  if (changed.length > 0) await book.put(after, request.asker.who, request.nowMs);
  return { answer: settingsAnswer(asked, withChoices(kitchen.book.settings, after), after, changed) };
}

/** An empty channel is no channel: where the surface was set up to send it counts again. */
function withoutEmpty(choices: Choices): Choices {
  return Object.fromEntries(Object.entries(choices).filter(([, value]) => value !== ''));
}
