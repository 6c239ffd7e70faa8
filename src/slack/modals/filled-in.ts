import type { ViewStateValue } from '@slack/bolt';
import type { FormValues } from '../../chat/forms/form.ts';

/** What was filled into a view, by field; the three characters Slack escapes in text stay as typed here. */
export function filledIn(
  values: Readonly<Record<string, Readonly<Record<string, ViewStateValue>>>>,
): FormValues {
  return Object.fromEntries(
    Object.entries(values).map(([field, elements]) => [field, chosenIn(Object.values(elements ?? {})[0])]),
  );
}

function chosenIn(element: ViewStateValue | undefined): string | readonly string[] | undefined {
  if (!element) return undefined;
  const { selected_options: options } = element;
  if (options) return options.map(({ value }) => value ?? '');
  return (
    element.value ??
    element.selected_option?.value ??
    element.selected_date ??
    element.selected_time ??
    element.selected_conversation ??
    undefined
  );
}
