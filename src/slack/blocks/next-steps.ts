import type { types } from '@slack/bolt';
import type { NextStep } from '../../chat/answer.ts';
import { harmless } from '../../chat/wrap.ts';
import { NEXT_STEP_ACTIONS } from '../ids.ts';
import { LIMITS } from '../limits.ts';
import { cut, inert } from '../text.ts';

/** The follow-ups as buttons that say their words for the person. Words a button cannot carry whole get none. */
export function nextStepsBlock(steps: readonly NextStep[], blockId: string): types.ActionsBlock | undefined {
  const sayable = steps.filter((step) => step.says.trim() !== '' && step.says.length <= LIMITS.buttonValue);
  const elements = sayable.slice(0, LIMITS.buttons).map((step, at) => ({
    type: 'button' as const,
    action_id: NEXT_STEP_ACTIONS[at] ?? '',
    text: { type: 'plain_text' as const, text: labelOf(step), emoji: false },
    value: step.says,
    ...(step.label.length > LIMITS.buttonShown
      ? { accessibility_label: cut(inert(harmless(step.label)), LIMITS.buttonLabel) }
      : {}),
  }));
  return elements.length > 0 ? { type: 'actions', block_id: blockId, elements } : undefined;
}

function labelOf(step: NextStep): string {
  const label = harmless(step.label).trim() || harmless(step.says).trim();
  return cut(inert(label.replaceAll('\n', ' ')), LIMITS.buttonShown);
}
