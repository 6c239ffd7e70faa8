import type { KitchenHere } from '../../kitchen/settings/kitchens-here.ts';
import type { Answer } from '../answer.ts';
import type { Chat, Refusal, Reply } from '../chat.ts';
import { notAllowed } from '../not-allowed.ts';
import type { Request } from '../request.ts';
import type { Faults, Form, FormId, FormPage, FormValues, Trouble } from './form.ts';
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
      // A form says all there is to say: it leans on nothing said before, not even on what it was asked back.
      const conversation = `${request.conversation}:${crypto.randomUUID()}`;
      const reply = await act({ ...request, conversation, text: filled.text }, filled.reading);
      const { answer, error } = reply;
      if (error?.code === 'not_allowed') return { reply };
      if (error) {
        const field = await fieldOf(form, asked, { ...error, values });
        return { faults: { [field]: `${error.message} ${error.hint}` } };
      }
      // A question back: it stands beside the field that answers it.
      if (answer?.data.asks !== undefined) {
        const asks = String(answer.data.asks);
        const field = await fieldOf(form, asked, { code: 'needs_more', message: answer.title, asks, values });
        return { faults: { [field]: questionText(answer) } };
      }
      return { reply };
    },
  };
}

const refusal = (code: string, message: string, hint: string): Refusal => ({ code, message, hint });

const refused = (id: FormId, request: Request, error: Refusal): Submitted => ({
  reply: { request: request.text || id, intent: 'unknown', slots: {}, error },
});

async function fieldOf(form: Form, asked: Parameters<Form['page']>[0], trouble: Trouble): Promise<string> {
  const { fields } = await form.page(asked, {});
  const blamed = form.blames?.(trouble);
  return fields.some(({ id }) => id === blamed) ? String(blamed) : (fields[0]?.id ?? '');
}

/** The question with what it can be answered by. */
function questionText({ title, sections }: Answer): string {
  const choices = sections.flatMap((section) => (section.kind === 'list' ? section.items : []));
  return choices.length > 0 ? `${title} One of: ${choices.join('; ')}.` : title;
}
