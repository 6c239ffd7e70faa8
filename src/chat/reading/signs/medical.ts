import type { MedicalTopic } from '../../topics.ts';
import type { Lexed } from '../lexed.ts';
import { isHealthWord } from '../vocabulary/health.ts';
import { isCalm } from './calm-words.ts';
import { withoutIdioms } from './idioms.ts';
import { DIAGNOSIS } from './medical/diagnosis.ts';
import { DISORDERED_EATING } from './medical/disordered-eating.ts';
import { DOSING } from './medical/dosing.ts';
import { FOOD_ILLNESS } from './medical/food-illness.ts';
import { HEALTH_WORDS } from './medical/health-words.ts';
import { INJURY } from './medical/injury.ts';
import { LABS } from './medical/labs.ts';
import { LOW_ENERGY } from './medical/low-energy.ts';
import { WEIGHT_LOSS } from './medical/weight-loss.ts';

/** Questions for the physician, the dietitian in person or the athletic trainer. What needs most care stands first. */
const TOPICS: readonly (readonly [topic: MedicalTopic, signs: readonly RegExp[]])[] = [
  ['food_illness', FOOD_ILLNESS],
  ['disordered_eating', DISORDERED_EATING],
  ['weight_loss', WEIGHT_LOSS],
  ['low_energy', LOW_ENERGY],
  ['injury', INJURY],
  ['labs', LABS],
  ['dosing', DOSING],
  ['diagnosis', DIAGNOSIS],
  ['diagnosis', HEALTH_WORDS],
];

/** Everyday sentences of a kitchen that a sign would fit. */
const EVERYDAY =
  / (?:weight of (?:each|every|a|the|one|\d+)|cut weight of (?:each|every|the)|piece weight|drop \d+ lbs? (?:of )?(?:oats|flour)|cooking period|growth period|caffeine (?:[a-z]+ )*drug test(?:s|ing)?) /;
/** Questions about a food for people with a condition are allergen questions. */
const FOR_FOOD =
  / (?:is|are|does) (?:the |this |these |our )?[a-z ]{0,30}(?:celiac|coeliac|diabetic) (?:safe|friendly|ok) /;

/** The kind of question for clinical staff, if it is one. Wins over all but an emergency; errs toward handing over. */
export function medicalTopic({ said, typed }: Lexed): MedicalTopic | undefined {
  return topicIn(said) ?? (typed === said ? undefined : topicIn(typed));
}

function topicIn(said: string): MedicalTopic | undefined {
  if (isCalm(said) || EVERYDAY.test(said) || FOR_FOOD.test(said)) return undefined;
  if (signIn(said) === undefined) return undefined;
  return signIn(withoutIdioms(said));
}

const signIn = (said: string): MedicalTopic | undefined =>
  TOPICS.find(([, signs]) => signs.some((sign) => sign.test(said)))?.[0] ??
  (said.split(' ').some(isHealthWord) && !ABOUT_RULES.test(said) ? 'diagnosis' : undefined);

/** Whether the rules of sport allow it is a question about supplements. */
const ABOUT_RULES =
  / (?:legal|illegal|allowed|banned|permitted|prohibited|ncaa|wada|usada|certified|nsf|eligib\w*|drug ?tests?|drug testing|tested) /;

/** The text of every pattern. */
export const MEDICAL_SOURCES: readonly string[] = TOPICS.flatMap(([, signs]) =>
  signs.map((sign) => sign.source),
);
