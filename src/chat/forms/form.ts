import type { Kitchen } from '../../kitchen/kitchen.ts';
import type { PersonRole, Request } from '../request.ts';
import type { Reading } from '../slots.ts';

export const FORM_IDS = ['batch', 'count', 'reading', 'game', 'needs', 'settings'] as const;
export type FormId = (typeof FORM_IDS)[number];

export interface Option {
  readonly value: string;
  readonly label: string;
}

interface Asking {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly optional?: true;
}

/** One thing a form asks for. Dates are YYYY-MM-DD, times HH:MM in the kitchen's zone, numbers as typed. */
export type Field =
  | (Asking & { readonly kind: 'line' | 'lines'; readonly initial?: string; readonly placeholder?: string })
  | (Asking & {
      readonly kind: 'number';
      readonly isDecimal: boolean;
      readonly least?: number;
      readonly most?: number;
      readonly initial?: string;
    })
  | (Asking & { readonly kind: 'date' | 'time'; readonly initial?: string })
  | (Asking & { readonly kind: 'choice'; readonly options: readonly Option[]; readonly initial?: string })
  | (Asking & {
      readonly kind: 'choices';
      readonly options: readonly Option[];
      readonly initial?: readonly string[];
    })
  /** A channel of the surface, by its own id. */
  | (Asking & { readonly kind: 'channel'; readonly initial?: string });

/** What was filled in, by field; a field left empty is absent. */
export type FormValues = Readonly<Record<string, string | readonly string[] | undefined>>;

/** A form ready to be shown. */
export interface FormPage {
  readonly id: FormId;
  /** At most 24 characters, as is `submit`. */
  readonly title: string;
  readonly submit: string;
  /** One line above the fields. */
  readonly intro?: string;
  readonly fields: readonly Field[];
}

/** What is wrong, beside the field it is about. */
export type Faults = Readonly<Record<string, string>>;

/** What was filled in, as the request it stands for; or what to mend first. */
export type Filled =
  | { readonly text: string; readonly reading: Reading; readonly isPrivate?: true }
  | { readonly faults: Faults };

export interface FormAsked {
  readonly request: Request;
  readonly kitchen: Kitchen;
}

/** What the command made of it: a problem, or (`needs_more`) a question back about the slot it `asks` for. */
export interface Trouble {
  readonly code: string;
  readonly message: string;
  readonly asks?: string;
  readonly values: FormValues;
}

/** A way to say something by filling it in; what it says is answered by the command of its reading. */
export interface Form {
  readonly id: FormId;
  readonly title: string;
  readonly submit: string;
  readonly roles: readonly PersonRole[];
  page(asked: FormAsked, given: FormValues): Promise<Pick<FormPage, 'intro' | 'fields'>>;
  read(values: FormValues, asked: FormAsked): Filled;
  /** The field a problem of the command belongs to; the page's first when it names none, or one this person does not get. */
  blames?(trouble: Trouble): string | undefined;
}
