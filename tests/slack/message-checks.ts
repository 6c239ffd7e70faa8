import { LIMITS } from '../../src/slack/limits.ts';

const PAGES = /<[!@#]/;

/** Every text in a block, with what kind of element holds it. */
export function textsOf(value: unknown): { type: unknown; text: string }[] {
  if (Array.isArray(value)) return value.flatMap(textsOf);
  if (typeof value !== 'object' || value === null) return [];
  const own =
    'text' in value && typeof value.text === 'string'
      ? [{ type: 'type' in value && value.type, text: value.text }]
      : [];
  return [...own, ...Object.values(value).flatMap(textsOf)];
}

/** What Slack would refuse or misread in a message; empty when it would take it. */
export function faultsOf(message: { text: string; blocks: readonly object[] }): string[] {
  const { text, blocks } = message;
  const json = JSON.stringify(blocks);
  const faults: string[] = [];
  const check = (isRight: boolean, fault: string) => isRight || faults.push(fault);
  check(text.length > 0 && text.length <= LIMITS.fallbackText, `text of ${text.length}`);
  check(!/[<>]|&(?!amp;|lt;|gt;)/.test(text), 'text not escaped');
  check(blocks.length > 0 && blocks.length <= LIMITS.blocks, `${blocks.length} blocks`);
  check(json.length <= LIMITS.message, `${json.length} characters of blocks`);
  check(!PAGES.test(json), 'a control sequence');
  check(!/\\u/.test(json.replaceAll('\\\\', '')), 'a character JSON cannot carry');
  for (const { type, text: shown } of textsOf(blocks)) {
    check(type === 'text' || type === 'plain_text', `text in a ${String(type)}`);
    check(shown.length > 0, 'an empty text');
  }
  for (const block of blocks) {
    if ('type' in block && block.type === 'header')
      check((textsOf(block)[0]?.text.length ?? 0) <= 150, 'a long header');
    if ('elements' in block && Array.isArray(block.elements)) faults.push(...elementFaults(block.elements));
  }
  return faults;
}

function elementFaults(elements: readonly Record<string, unknown>[]): string[] {
  if (elements.length === 0) return ['a block with nothing in it'];
  const buttons = elements.filter((element) => element.type === 'button');
  const ids = new Set(buttons.map((button) => button.action_id));
  return [
    ...(ids.size === buttons.length ? [] : ['two buttons with one id']),
    ...buttons.flatMap((button) => {
      const label = (button.text as { text: string }).text;
      const value = String(button.value);
      const accessible = String(button.accessibility_label ?? '');
      return label.length <= 75 && value.length >= 1 && value.length <= 2000 && accessible.length <= 75
        ? []
        : ['a long button'];
    }),
  ];
}
