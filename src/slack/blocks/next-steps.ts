import type { types } from '@slack/bolt';
import type { NextStep } from '../../chat/answer.ts';
import { formActionId, MARK_ACTIONS, NEXT_STEP_ACTIONS } from '../ids.ts';
import { LIMITS } from '../limits.ts';
import { cut, shown } from '../text.ts';
import { costOf } from './elements.ts';

/** The follow-ups as buttons that say their words for the person. Words a button cannot carry whole get none. */
export function nextStepsBlock(steps: readonly NextStep[], blockId: string): types.ActionsBlock | undefined {
  const sayable = steps
    .map((step) => ({ ...step, label: shown(step.label), says: shown(step.says) }))
    .filter(({ says }) => says.trim() !== '' && says.length <= LIMITS.buttonValue);
  let elements = sayable.slice(0, LIMITS.buttons).map((step, at, all) => button(step, at, all));
  while (costOf({ type: 'actions', block_id: blockId, elements }) > LIMITS.buttonsCost) {
    elements = elements.slice(0, -1);
  }
  return elements.length > 0 ? { type: 'actions', block_id: blockId, elements } : undefined;
}

/** A second button of a row for the same form says its words instead: ids are unique within a row. */
function button(step: NextStep, at: number, all: readonly NextStep[]): types.Button {
  const form = all.findIndex((each) => each.form?.id === step.form?.id) === at ? step.form : undefined;
  const label = (step.label.trim() || step.says.trim()).replaceAll('\n', ' ');
  return {
    type: 'button',
    action_id: form ? formActionId(form.id) : ((step.marks ? MARK_ACTIONS : NEXT_STEP_ACTIONS)[at] ?? ''),
    text: { type: 'plain_text', text: cut(label, LIMITS.buttonShown), emoji: false },
    value: form ? JSON.stringify(form.given ?? {}) : step.says,
    ...(label.length > LIMITS.buttonShown ? { accessibility_label: cut(label, LIMITS.buttonLabel) } : {}),
  };
}
