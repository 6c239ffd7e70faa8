import type { Field, FormValues, Option } from './form.ts';

/** The text of a field, without blanks around it; `undefined` when it was left empty. */
export function textIn(values: FormValues, id: string): string | undefined {
  const value = values[id];
  const text = typeof value === 'string' ? value.trim() : '';
  return text === '' ? undefined : text;
}

export function listIn(values: FormValues, id: string): readonly string[] {
  const value = values[id];
  if (Array.isArray(value)) return value as readonly string[];
  return typeof value === 'string' && value !== '' ? [value] : [];
}

/** The number in a field; `undefined` when it was left empty, NaN when it holds none. Reads "41,5" as people type it. */
export function numberIn(values: FormValues, id: string): number | undefined {
  const text = textIn(values, id)?.replace(',', '.');
  if (text === undefined) return undefined;
  return /^[+-]?\d+(?:\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
}

/** The field as it was given, or its own beginning. */
export const initialOf = (given: FormValues, id: string, otherwise?: string): { initial?: string } => {
  const value = textIn(given, id) ?? otherwise;
  return value === undefined ? {} : { initial: value };
};

/** A surface's list holds so many. */
const MOST_OPTIONS = 100;

/** A choice that may begin with one of its options only. */
export function choice(
  field: Pick<Field, 'id' | 'label' | 'hint' | 'optional'>,
  options: readonly Option[],
  initial: string | undefined,
): Field {
  const shown = options.slice(0, MOST_OPTIONS);
  const begins = shown.some(({ value }) => value === initial) ? { initial: initial as string } : {};
  return { ...field, kind: 'choice', options: shown, ...begins };
}

/** "2026-11-02 09:30" from a date and a time field; either may be empty. */
export function whenIn(values: FormValues, date: string, time: string): string | undefined {
  const said = [textIn(values, date), textIn(values, time)].filter((part) => part !== undefined);
  return said.length > 0 ? said.join(' ') : undefined;
}
