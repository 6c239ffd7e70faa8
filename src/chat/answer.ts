import type { FormId, FormValues } from './forms/form.ts';

export interface TableColumn {
  readonly name: string;
  readonly align: 'left' | 'right';
}

/** A part of an answer, in reading order. Text is plain: no markup, not escaped; surfaces escape. */
export type Section =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'list'; readonly heading?: string; readonly items: readonly string[] }
  | { readonly kind: 'steps'; readonly heading?: string; readonly items: readonly string[] }
  | {
      readonly kind: 'table';
      readonly heading?: string;
      readonly columns: readonly TableColumn[];
      readonly rows: readonly (readonly string[])[];
    };

/** A follow-up worth a button: what it shows and the words it says for the person. */
export interface NextStep {
  readonly label: string;
  readonly says: string;
  /** The form that does it too: a surface with forms opens that one, filled in as far as `given` says. */
  readonly form?: { readonly id: FormId; readonly given?: FormValues };
  /** What comes of it is told by the message the button stands in, to all who read it: its answer carries a `mark`. */
  readonly marks?: true;
}

/** What became of what a message told. A surface that can change the message shows it there instead of answering. */
export interface Mark {
  /** Whose doing it is, as in `Asker.who`. */
  readonly who: string;
  /** After the person's name: "has it, Fri Dec 4, 9:05 am CST". */
  readonly did: string;
  /** The buttons of this kind that are left. */
  readonly next: readonly NextStep[];
  /** Where the messages that told of it stand, in the surface's own words. */
  readonly told: readonly string[];
}

export interface Attachment {
  readonly fileName: string;
  readonly mediaType: string;
  readonly content: string;
}

/** What a command answers, before any surface draws it. */
export interface Answer {
  /** The number first: one line that answers the question by itself. */
  readonly title: string;
  readonly sections: readonly Section[];
  /** Short, specific to this answer. */
  readonly cautions: readonly string[];
  readonly next: readonly NextStep[];
  readonly attachments?: readonly Attachment[];
  readonly mark?: Mark;
  /** `asker`: only the person who asked may see it (anything personal, allergies). */
  readonly audience: 'asker' | 'channel';
  /** The same figures for machines: keys carry units. */
  readonly data: Readonly<Record<string, unknown>>;
}
