import { LIMITS } from '../../src/slack/limits.ts';
import { textsOf } from './message-checks.ts';

type Part = Record<string, unknown>;

/** What Slack would refuse in a modal or a home; empty when it would take it. Limits from Slack's reference of views. */
export function viewFaults(view: { type: string; blocks: readonly object[] } & Part): string[] {
  const json = JSON.stringify(view);
  const faults: string[] = [];
  const check = (isRight: boolean, fault: string) => isRight || faults.push(fault);
  check(view.blocks.length >= 1 && view.blocks.length <= 100, `${view.blocks.length} blocks`);
  check(json.length <= 250_000, `${json.length} characters`);
  check(!/<[!@#]/.test(json), 'a control sequence');
  for (const { text } of textsOf(view)) check(text.length > 0, 'an empty text');
  if (view.type === 'modal') {
    for (const name of ['title', 'submit', 'close']) {
      const words = view[name] as { text: string } | undefined;
      check(!words || words.text.length <= 24, `a long ${name}`);
    }
    const asks = view.blocks.some((block) => (block as Part).type === 'input');
    check(!asks || view.submit !== undefined, 'inputs without a submit button');
  } else check(view.title === undefined, 'a home with a title');
  const ids = view.blocks.flatMap((block) => ((block as Part).block_id as string | undefined) ?? []);
  check(new Set(ids).size === ids.length, 'two blocks with one id');
  check(
    ids.every((id) => id.length <= 255),
    'a long id',
  );
  for (const block of view.blocks as Part[]) {
    const elements = [block.element, ...((block.elements as unknown[]) ?? [])].filter(Boolean) as Part[];
    faults.push(...elements.flatMap(elementFaults));
  }
  return faults;
}

function elementFaults(element: Part): string[] {
  const options = (element.options ?? []) as { text: { text: string }; value: string }[];
  const most = element.type === 'checkboxes' ? LIMITS.checkboxes : 100;
  const values = options.map(({ value }) => value);
  const initial = [element.initial_option, ...((element.initial_options as unknown[]) ?? [])].filter(Boolean);
  return [
    ...(options.length > most ? [`${options.length} options`] : []),
    ...('options' in element && options.length === 0 ? ['a list without options'] : []),
    ...(new Set(values).size === values.length ? [] : ['two options with one value']),
    ...options.flatMap(({ text, value }) =>
      text.text.length <= 75 && value.length <= 75 ? [] : ['a long option'],
    ),
    ...initial.flatMap((each) =>
      options.some((option) => JSON.stringify(option) === JSON.stringify(each)) ? [] : ['an unknown option'],
    ),
  ];
}
