import type { KitchenSettings } from '../../nutrition/book.ts';
import type { Command } from '../command.ts';
import { ALL_ROLES } from '../roles.ts';
import { type MedicalTopic, medicalTopic } from '../topics.ts';

type Contacts = KitchenSettings['contacts'];

/** Two lines a topic, kind and without a single figure: what we leave to whom. Common practice, no source. */
const WORDS: Record<MedicalTopic, (to: Contacts) => string> = {
  weight_loss: (to) =>
    `I do not give weight or diet advice. ${cap(to.dietitian)} can talk it through with you in private, and that talk starts from what your body needs to train and recover.`,
  dosing: (to) =>
    `How much of a medicine or supplement to take is for ${to.physician} or ${to.dietitian} to say. Please ask before you take it.`,
  diagnosis: (to) =>
    `I cannot tell what is behind a symptom. Please tell ${to.athleticTrainer} or ${to.physician} today, even if it seems small.`,
  injury: (to) =>
    `An injury belongs with ${to.athleticTrainer} first. ${cap(to.dietitian)} can help with eating while you heal.`,
  labs: (to) =>
    `Lab results are for ${to.physician} to read with you. ${cap(to.dietitian)} can then help with food. Please keep results out of this chat.`,
  disordered_eating: (to) =>
    `Thank you for saying it. You do not have to handle this alone, and it is not a failing. ${cap(to.dietitian)}, ${to.physician} or ${to.athleticTrainer} will listen in private and help you, today if you want.`,
  food_illness: (to) =>
    `This can be a reaction to an allergen or a foodborne illness; I cannot tell which. Tell ${to.athleticTrainer} or ${to.physician} now, with what was eaten and when. If it keeps happening, ${to.dietitian} will listen in private.`,
  low_energy: (to) =>
    `Feeling run down, dizzy or cold, missed periods or repeated injuries deserve a proper look. Please talk to ${to.physician} and ${to.dietitian} soon; in the meantime please do not cut back on eating.`,
};

/** What a kitchen does when somebody is ill after eating from a batch: common practice, no source. */
const IF_EATEN = ({ emergencyNumber }: KitchenSettings): string[] => [
  `Swelling, hives, trouble breathing, faintness or vomiting again and again: epinephrine auto-injector if it is theirs, and call ${emergencyNumber} at once.`,
  'Eat no more of it. Keep what is left, the label and the time it was eaten.',
  'Kitchen: set the whole batch aside, marked "do not serve", until staff have decided; your local health department says what to report.',
];

const GENERAL = (to: Contacts): string =>
  `I cannot advise on health. ${cap(to.athleticTrainer)} can tell you today who should look at it.`;

const cap = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Hands a medical question over to the people licensed for it, in two or three lines. */
export const medical: Command = {
  intent: 'medical',
  roles: ALL_ROLES,
  help: { line: 'who to see about health, weight, injury or medicines', examples: [] },
  answers({ slots, kitchen }) {
    const { contacts, emergencyNumber } = kitchen.book.settings;
    const topic = medicalTopic(slots.topic);
    return {
      answer: {
        title: `That is a question for people who know you: ${contacts.dietitian}, ${contacts.physician}, ${contacts.athleticTrainer}.`,
        sections: [
          { kind: 'text', text: (topic ? WORDS[topic] : GENERAL)(contacts) },
          ...(topic === 'food_illness'
            ? [{ kind: 'list', items: IF_EATEN(kitchen.book.settings) } as const]
            : []),
          { kind: 'text', text: `If it is urgent, call ${emergencyNumber}.` },
        ],
        cautions: [],
        next: [],
        audience: 'asker',
        data: { ...(topic ? { topic } : {}), contacts },
      },
    };
  },
};
