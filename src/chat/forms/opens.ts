import type { NextStep } from '../answer.ts';
import type { FormId, FormValues } from './form.ts';

/** A button for a form; a surface without forms says the words instead. */
export const opens = (label: string, says: string, id: FormId, given?: FormValues): NextStep => ({
  label,
  says,
  form: { id, ...(given ? { given } : {}) },
});
