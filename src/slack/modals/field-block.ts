import type { types } from '@slack/bolt';
import type { Field, Option } from '../../chat/forms/form.ts';
import { LIMITS } from '../limits.ts';
import { cut, shown } from '../text.ts';

/** Every field has one element, so one name serves all of them; the block carries the field's id. */
const ELEMENT = 'value';

/** A field as the input block that asks for it. */
export function fieldBlock(field: Field): types.InputBlock {
  return {
    type: 'input',
    block_id: field.id,
    label: plain(field.label, LIMITS.inputLabel),
    ...(field.hint === undefined ? {} : { hint: plain(field.hint, LIMITS.inputLabel) }),
    ...(field.optional ? { optional: true } : {}),
    element: elementOf(field),
  };
}

function elementOf(field: Field): types.InputBlock['element'] {
  const action_id = ELEMENT;
  switch (field.kind) {
    case 'line':
    case 'lines':
      return {
        type: 'plain_text_input',
        action_id,
        multiline: field.kind === 'lines',
        max_length: field.kind === 'lines' ? LIMITS.inputText : LIMITS.inputLine,
        ...(field.placeholder === undefined
          ? {}
          : { placeholder: plain(field.placeholder, LIMITS.optionText) }),
        ...(field.initial ? { initial_value: cut(field.initial, LIMITS.inputText) } : {}),
      };
    case 'number':
      return {
        type: 'number_input',
        action_id,
        is_decimal_allowed: field.isDecimal,
        ...(field.least === undefined ? {} : { min_value: String(field.least) }),
        ...(field.most === undefined ? {} : { max_value: String(field.most) }),
        ...(isNumber(field.initial) ? { initial_value: field.initial as string } : {}),
      };
    case 'date':
      return { type: 'datepicker', action_id, ...(field.initial ? { initial_date: field.initial } : {}) };
    case 'time':
      return { type: 'timepicker', action_id, ...(field.initial ? { initial_time: field.initial } : {}) };
    case 'choice': {
      const initial = field.options.find(({ value }) => value === field.initial);
      return {
        type: 'static_select',
        action_id,
        options: field.options.map(optionOf),
        ...(initial ? { initial_option: optionOf(initial) } : {}),
      };
    }
    case 'choices': {
      const initial = field.options.filter(({ value }) => field.initial?.includes(value)).map(optionOf);
      const begins = initial.length > 0 ? { initial_options: initial } : {};
      const options = field.options.map(optionOf);
      return options.length <= LIMITS.checkboxes
        ? { type: 'checkboxes', action_id, options, ...begins }
        : { type: 'multi_static_select', action_id, options, ...begins };
    }
    case 'channel':
      return {
        type: 'conversations_select',
        action_id,
        filter: { include: ['public', 'private'], exclude_external_shared_channels: true },
        ...(field.initial ? { initial_conversation: field.initial } : {}),
      };
    default:
      return field satisfies never;
  }
}

const isNumber = (text: string | undefined): boolean => text !== undefined && /^-?\d+(?:\.\d+)?$/.test(text);

export const plain = (text: string, most: number): types.PlainTextElement => ({
  type: 'plain_text',
  text: cut(shown(text), most) || ' ',
  emoji: false,
});

export const optionOf = ({ value, label }: Option): types.PlainTextOption => ({
  value: cut(value, LIMITS.optionText),
  text: plain(label, LIMITS.optionText),
});
