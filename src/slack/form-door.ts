import { randomUUID } from 'node:crypto';
import type { types } from '@slack/bolt';
import type { WebClient } from '@slack/web-api';
import type { Chat, Refusal } from '../chat/chat.ts';
import type { Submitted } from '../chat/forms/desk.ts';
import type { Faults, FormId, FormValues } from '../chat/forms/form.ts';
import { Problem } from '../chat/problem.ts';
import type { Request } from '../chat/request.ts';
import type { Clock } from '../kitchen/kitchen.ts';
import { errorCode, placeInCode } from './errors.ts';
import { LIMITS } from './limits.ts';
import type { Log } from './log.ts';
import { outcomeMessage } from './modals/outcome-message.ts';
import { answerView, formView, openingView, refusalView, savingView } from './modals/views.ts';
import type { Person, Roles } from './roles.ts';
import { cut, shown } from './text.ts';

/** Slack waits 3 s for the answer to a submission, the network included. */
const PATIENCE_MS = 2_000;

/** Who opens or submits a form, and how to reach them. */
export interface AtDoor {
  readonly person: Person;
  readonly client: WebClient;
}

/** What Slack is told in the acknowledgement of a submission. */
export type SubmissionAck =
  | { readonly response_action: 'errors'; readonly errors: Record<string, string> }
  | { readonly response_action: 'update'; readonly view: types.ModalView };

export interface FormDoor {
  /** Opens a form; never throws. `trigger` is good for 3 s, so something is shown before anything is looked up. */
  open(id: FormId, trigger: string, at: AtDoor, given?: FormValues): Promise<void>;
  /** Says what was filled in, and acknowledges in time whatever happens. */
  submit(
    id: FormId,
    view: { readonly id: string; readonly title: string },
    values: FormValues,
    at: AtDoor,
    ack: (answer: SubmissionAck) => Promise<void>,
  ): Promise<void>;
}

export interface FormDoorParts {
  readonly chat: Chat;
  readonly roles: Roles;
  readonly clock: Clock;
  readonly log: Log;
  /** Something was written down in this workspace. */
  readonly changed: (workspace: string) => void;
  readonly patienceMs?: number;
}

/** Between the forms of the chat and Slack's modals. */
export function createFormDoor(parts: FormDoorParts): FormDoor {
  const { chat, roles, clock, log } = parts;

  async function requestOf({ person, client }: AtDoor, requestKey?: string): Promise<Request> {
    const { workspace, user } = person;
    return {
      text: '',
      asker: { role: await roles.roleOf(person, client), who: user, workspace },
      conversation: `${workspace}:form:${user}`,
      isPrivate: true,
      nowMs: clock.nowMs(),
      ...(requestKey === undefined ? {} : { requestKey }),
    };
  }

  async function submitted(id: FormId, viewId: string, values: FormValues, at: AtDoor): Promise<Submitted> {
    try {
      const done = await chat.forms.submit(id, await requestOf(at, `view:${viewId}`), values);
      if ('reply' in done && done.reply.answer) parts.changed(at.person.workspace);
      return done;
    } catch (error) {
      // Beside a field, so that the form stays open with what was typed.
      const { message, hint } = failed(error);
      const [field = ''] = Object.keys(values);
      return { faults: { [field]: `${message} ${hint}` } };
    }
  }

  function failed(error: unknown): Refusal {
    if (error instanceof Problem) return { code: error.code, message: error.message, hint: error.hint };
    const id = randomUUID().slice(0, 8);
    log.error({ id, code: errorCode(error), at: placeInCode(error) }, 'a form failed');
    return {
      code: 'internal',
      message: `Something went wrong on our side (${id}).`,
      hint: 'Try again; if it stays, tell the kitchen staff this id.',
    };
  }

  /** The view as it is to be now; a form with faults is shown again with what was typed. */
  async function viewAfter(
    id: FormId,
    title: string,
    done: Submitted,
    values: FormValues,
    at: AtDoor,
  ): Promise<types.ModalView> {
    if ('faults' in done) {
      const page = await chat.forms.open(id, await requestOf(at), values);
      return 'error' in page ? refusalView(title, page.error) : formView(page, done.faults);
    }
    const { answer, error } = done.reply;
    if (answer) return answerView(title, answer);
    return refusalView(title, error ?? failed(undefined));
  }

  return {
    async open(id, trigger, at, given) {
      try {
        const opened = await at.client.views.open({ trigger_id: trigger, view: openingView() });
        const page = await chat.forms
          .open(id, await requestOf(at), given)
          .catch((error: unknown) => ({ error: failed(error) }));
        const view = 'error' in page ? refusalView('Not now', page.error) : formView(page);
        const { id: viewId, hash } = opened.view ?? {};
        if (viewId) await at.client.views.update({ view_id: viewId, view, ...(hash ? { hash } : {}) });
        log.info({ form: id }, 'a form was opened');
      } catch (error) {
        log.warn({ form: id, code: errorCode(error) }, 'a form was not opened');
      }
    },

    async submit(id, { id: viewId, title }, values, at, ack) {
      const startedMs = clock.nowMs();
      const work = submitted(id, viewId, values, at);
      const done = await inTime(work, parts.patienceMs ?? PATIENCE_MS);
      if (done && 'faults' in done) {
        await ack({ response_action: 'errors', errors: shownFaults(done.faults) });
      } else if (done) {
        await ack({ response_action: 'update', view: await viewAfter(id, title, done, values, at) });
      } else {
        await ack({ response_action: 'update', view: savingView(title, values) });
        await showLater(id, viewId, title, await work, values, at);
      }
      log.info({ form: id, ms: clock.nowMs() - startedMs }, 'a form was answered');
    },
  };

  /** Into the view that waits; where that is closed by now, as a direct message. */
  async function showLater(
    id: FormId,
    viewId: string,
    title: string,
    done: Submitted,
    values: FormValues,
    at: AtDoor,
  ): Promise<void> {
    const view = await viewAfter(id, title, done, values, at);
    try {
      await at.client.views.update({ view_id: viewId, view });
    } catch (error) {
      log.warn({ form: id, code: errorCode(error) }, 'a form could not be shown again');
      await tellDirectly(done, at).catch((failure: unknown) =>
        log.error({ form: id, code: errorCode(failure) }, 'the outcome of a form was not told'),
      );
    }
  }
}

/** Faults quote what was typed. */
const shownFaults = (faults: Faults): Record<string, string> =>
  Object.fromEntries(
    Object.entries(faults).map(([field, fault]) => [field, cut(shown(fault), LIMITS.statement)]),
  );

async function tellDirectly(done: Submitted, { person, client }: AtDoor): Promise<void> {
  await client.chat.postMessage({
    channel: person.user,
    ...outcomeMessage(done),
    unfurl_links: false,
    unfurl_media: false,
  });
}

/** What the work gives within so many milliseconds, else `undefined`; the work goes on. */
async function inTime<T>(work: Promise<T>, ms: number): Promise<T | undefined> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), ms);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
