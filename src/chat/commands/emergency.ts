import type { Command } from '../command.ts';
import { ALL_ROLES } from '../roles.ts';
import { type EmergencyTopic, emergencyTopic } from '../topics.ts';

interface FixedText {
  readonly first: string;
  readonly after: readonly string[];
}

/**
 * Fixed words, the call first. Common practice (emergency action plans name the call, the person's own plan and the
 * athletic trainer); first aid beyond that is left to trained people and to whoever answers the call.
 */
const WORDS: Record<EmergencyTopic, (number: string) => FixedText> = {
  allergic_reaction: (number) => ({
    first: `Call ${number} now. Use the person's prescribed epinephrine auto-injector and follow their emergency action plan.`,
    after: ['Do not leave them alone, even if they feel better.'],
  }),
  choking: (number) => ({
    first: `Call ${number} now. Follow the emergency action plan; someone trained starts first aid for choking at once.`,
    after: ['Stay on the line and do what the dispatcher says.'],
  }),
  collapse: (number) => ({
    first: `Call ${number} now. Follow the emergency action plan; send someone for the AED.`,
    after: ['Stay on the line and do what the dispatcher says. Do not leave them alone.'],
  }),
  heat_illness: (number) => ({
    first: `Call ${number} now. Follow the emergency action plan and start cooling the person at once.`,
    after: ['Stay on the line and do what the dispatcher says. Do not leave them alone.'],
  }),
  self_harm: (number) => ({
    first: `Call ${number} now if anyone is in danger.${number === '911' ? ' In the US, call or text 988 at any hour to reach the Suicide & Crisis Lifeline.' : ''}`,
    after: [
      'Stay with the person. If this is about you: please do not stay alone, tell someone near you now.',
    ],
  }),
  violence: (number) => ({
    first: `Call ${number} now, from a safe place.`,
    after: ['Get away from the danger first. Stay on the line and do what the dispatcher says.'],
  }),
};

const GENERAL = (number: string): FixedText => ({
  first: `Call ${number} now. Follow the person's emergency action plan; use their prescribed epinephrine auto-injector if it is an allergic reaction.`,
  after: ['Stay on the line and do what the dispatcher says. Do not leave them alone.'],
});

/** Help first: nothing about food, nothing to choose from, nothing to click. */
export const emergency: Command = {
  intent: 'emergency',
  roles: ALL_ROLES,
  help: { line: 'who to call', examples: [] },
  answers({ slots, kitchen }) {
    const { emergencyNumber, contacts } = kitchen.book.settings;
    const topic = emergencyTopic(slots.topic);
    const { first, after } = (topic ? WORDS[topic] : GENERAL)(emergencyNumber);
    return {
      answer: fixed(first, [...after, `Then tell ${contacts.athleticTrainer}.`], emergencyNumber, topic),
    };
  },
};

const fixed = (title: string, lines: readonly string[], emergencyNumber: string, topic?: EmergencyTopic) =>
  ({
    title,
    sections: [{ kind: 'text', text: lines.join('\n') }],
    cautions: [],
    next: [],
    // People beside the person can help; what somebody says about themselves stays with them.
    audience: topic === 'self_harm' ? 'asker' : 'channel',
    data: { emergencyNumber, ...(topic ? { topic } : {}) },
  }) as const;
