import type { Answer } from '../answer.ts';
import type { Command } from '../command.ts';
import type { PersonRole } from '../request.ts';
import type { Intent } from '../slots.ts';

/** What is honest to say about work this kitchen cannot be asked for yet. */
export interface Later {
  readonly intent: Intent;
  readonly roles: readonly PersonRole[];
  readonly line: string;
  readonly examples: readonly string[];
  /** One line: that it is not done, so that nobody thinks something was logged. */
  readonly title: string;
  readonly willDo: string;
  /** What to do today, by hand or by asking something else. */
  readonly today: string;
  readonly cautions?: readonly string[];
  readonly next?: readonly string[];
}

/** A command that says what it will do and what works today, and never pretends to have done it. */
export function laterCommand(later: Later): Command {
  const answer: Answer = {
    title: later.title,
    sections: [
      { kind: 'text', text: `Today: ${later.today}` },
      { kind: 'text', text: `Coming: ${later.willDo}` },
    ],
    cautions: later.cautions ?? [],
    next: (later.next ?? []).map((says) => ({ label: says, says })),
    audience: 'asker',
    data: { done: false },
  };
  return {
    intent: later.intent,
    roles: later.roles,
    help: { line: later.line, examples: later.examples },
    later: true,
    answers: () => ({ answer }),
  };
}
