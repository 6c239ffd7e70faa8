import type { KitchenHere } from '../../kitchen/settings/kitchens-here.ts';
import type { Chat, Refusal, Reply } from '../chat.ts';
import { notAllowed } from '../not-allowed.ts';
import type { Request } from '../request.ts';
import type { Faults, Form, FormId, FormPage, FormValues } from './form.ts';
import { FORMS } from './forms.ts';

/** What became of a form: answered, or to be mended where it says. */
export type Submitted = { readonly reply: Reply } | { readonly faults: Faults };

export interface Forms {
  /** The form as this person gets it, filled in as far as `given` says. */
  open(id: FormId, request: Request, given?: FormValues): Promise<FormPage | { readonly error: Refusal }>;
  /** Says what was filled in. Nothing is kept of a form with faults. */
  submit(id: FormId, request: Request, values: FormValues): Promise<Submitted>;
}

/** Forms over the commands of `chat`. */
export function createForms(act: Chat['act'], here: KitchenHere): Forms {
  const formFor = (id: FormId, request: Request): Form | { readonly error: Refusal } => {
    const form = FORMS.get(id);
    if (!form) return { error: refusal('not_found', 'There is no such form.', 'Type "help".') };
    if (form.roles.includes(request.asker.role)) return form;
    const { code, message, hint } = notAllowed(request.asker.role);
    return { error: refusal(code, message, hint) };
  };

  return {
    async open(id, request, given = {}) {
      const form = formFor(id, request);
      if ('error' in form) return form;
      const kitchen = await here(request.asker.workspace);
      const page = await form.page({ request, kitchen }, given);
      return { id, title: form.title, submit: form.submit, ...page };
    },

    async submit(id, request, values) {
      const form = formFor(id, request);
      if ('error' in form) return refused(id, request, form.error);
      const asked = { request, kitchen: await here(request.asker.workspace) };
      const filled = form.read(values, asked);
      if ('faults' in filled) return filled;
      const reply = await act({ ...request, text: filled.text }, filled.reading);
      const { answer, error } = reply;
      if (error?.code === 'not_allowed') return { reply };
      if (error) {
        const field = form.blames?.(error.code, error.message) ?? (await firstField(form, asked));
        return { faults: { [field]: `${error.message} ${error.hint}` } };
      }
      // A question back: the form cannot ask it, so it says what to write instead.
      if (answer?.data.asks !== undefined) {
        const field = form.blames?.('needs_more', answer.title) ?? (await firstField(form, asked));
        return { faults: { [field]: answer.title } };
      }
      return { reply };
    },
  };
}

const refusal = (code: string, message: string, hint: string): Refusal => ({ code, message, hint });

const refused = (id: FormId, request: Request, error: Refusal): Submitted => ({
  reply: { request: request.text || id, intent: 'unknown', slots: {}, error },
});

async function firstField(form: Form, asked: Parameters<Form['page']>[0]): Promise<string> {
  const { fields } = await form.page(asked, {});
  return fields[0]?.id ?? '';
}
