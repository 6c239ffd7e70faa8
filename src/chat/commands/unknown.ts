import type { Answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { ALL_ROLES } from '../roles.ts';
import { nearestCommands } from './nearest.ts';

/** Shown when nothing that was typed is like anything we can do. */
const USUAL = ['40 oat bars', 'macros oat bars', 'nut-free oat bars'];

/** Answers what was not understood with what can be said instead: the nearest three requests. */
export function createUnknown(commands: () => readonly Command[]): Command {
  return {
    intent: 'unknown',
    roles: ALL_ROLES,
    help: { line: 'says what can be asked instead', examples: [] },
    async answers({ request }) {
      const usable = commands().filter(({ roles }) => roles.includes(request.asker.role));
      const near = (await nearestCommands(request.text, usable, 3)).map(({ example }) => example);
      return { answer: instead([...new Set([...near, ...USUAL])].slice(0, 3)) };
    },
  };
}

function instead(examples: readonly string[]): Answer {
  return {
    title: 'I did not understand that.',
    sections: [
      {
        kind: 'text',
        text: 'I scale recipes, convert measures, give macros, find swaps and check allergens in this kitchen.',
      },
      {
        kind: 'list',
        heading: 'Did you mean something like',
        items: examples.map((example) => `"${example}"`),
      },
    ],
    cautions: [],
    next: [...new Set([...examples, 'help'])].map((says) => ({ label: says, says })),
    audience: 'asker',
    data: { examples },
  };
}
