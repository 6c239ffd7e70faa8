import type { Answer, Section } from '../answer.ts';
import type { Command } from '../command.ts';
import type { PersonRole } from '../request.ts';
import { ALL_ROLES } from '../roles.ts';
import type { Intent } from '../slots.ts';
import { nearestCommands } from './nearest.ts';

/** What people want, in their words, and what serves it. */
const GROUPS: readonly { readonly want: string; readonly intents: readonly Intent[] }[] = [
  { want: 'Make it', intents: ['scale', 'measure', 'swap', 'recipes'] },
  { want: 'Know what is in it', intents: ['macros', 'allergens', 'fuel', 'supplement'] },
  { want: 'Plan and buy', intents: ['balance', 'plan', 'shop', 'cost'] },
  { want: 'Keep track', intents: ['stock', 'made', 'served', 'tossed', 'counted', 'temperature', 'trace'] },
  { want: 'Games and reminders', intents: ['schedule', 'game', 'remind'] },
];

/** `help` and `help <topic>` over the commands there are; only those the asker may use are shown. */
export function createHelp(commands: () => readonly Command[]): Command {
  return {
    intent: 'help',
    roles: ALL_ROLES,
    help: { line: 'what can be asked, with examples', examples: ['help', 'help scale'] },
    async answers({ slots, request }) {
      const usable = commands().filter((command) => command.roles.includes(request.asker.role));
      const topic = typeof slots.topic === 'string' ? slots.topic.trim() : '';
      if (topic === '') return { answer: overview(usable) };
      const named = usable.find((command) => command.intent === topic.toLowerCase());
      const nearest = named ?? (await nearestCommands(topic, usable, 1))[0]?.command;
      return { answer: nearest ? helpOn(nearest) : notAbout(topic, usable) };
    },
  };
}

function overview(usable: readonly Command[]): Answer {
  const sections = GROUPS.map((group): Section => {
    const members = usable.filter((command) => group.intents.includes(command.intent));
    return { kind: 'list', heading: group.want, items: members.map(lineOf) };
  });
  return {
    title: 'Ask as you would text a colleague.',
    sections: sections.filter((section) => section.kind !== 'list' || section.items.length > 0),
    cautions: [],
    next: [
      { label: 'Help with scaling', says: 'help scale' },
      { label: 'Recipes', says: 'recipes' },
    ],
    audience: 'asker',
    data: { commands: usable.map((command) => command.intent) },
  };
}

const lineOf = ({ help }: Command): string =>
  `${help.examples[0] ? `"${help.examples[0]}": ` : ''}${help.line}`;

function helpOn({ intent, help, roles }: Command): Answer {
  const who: readonly PersonRole[] = roles;
  return {
    title: `${intent}: ${help.line}`,
    sections: [{ kind: 'list', heading: 'Say, for example', items: help.examples }],
    cautions: [],
    next: help.examples.slice(0, 3).map((example) => ({ label: example, says: example })),
    audience: 'asker',
    data: { command: intent, examples: help.examples, roles: who },
  };
}

function notAbout(topic: string, usable: readonly Command[]): Answer {
  const known = usable.map((command) => command.intent);
  return {
    title: `There is no help on "${topic}".`,
    sections: [{ kind: 'text', text: `There is help on ${known.join(', ')}.` }],
    cautions: [],
    next: [{ label: 'Help', says: 'help' }],
    audience: 'asker',
    data: { commands: known },
  };
}
