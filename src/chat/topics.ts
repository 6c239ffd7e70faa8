/** What a question for the clinical team is about, as far as our words differ. */
export const MEDICAL_TOPICS = [
  'weight_loss',
  'dosing',
  'diagnosis',
  'injury',
  'labs',
  'disordered_eating',
  'low_energy',
  'food_illness',
] as const;
export type MedicalTopic = (typeof MEDICAL_TOPICS)[number];

/** What kind of emergency, as far as our words differ. */
export const EMERGENCY_TOPICS = [
  'allergic_reaction',
  'choking',
  'collapse',
  'heat_illness',
  'self_harm',
  'violence',
] as const;
export type EmergencyTopic = (typeof EMERGENCY_TOPICS)[number];

type Words<T> = readonly (readonly [RegExp, T])[];

/** First match wins: what needs the most care stands first. */
const MEDICAL_WORDS: Words<MedicalTopic> = [
  [/food ?(?:borne )?(?:ill|pois)/, 'food_illness'],
  [/disorder|binge|purg|anorexi|bulimi|restrict/, 'disordered_eating'],
  [/energy|reds?\b|period|menstru|amenorr/, 'low_energy'],
  [/weight|cutting|\bdiet|lean|body/, 'weight_loss'],
  [/dos(e|ing|age)|medic(ine|ation)|drug|pill/, 'dosing'],
  [/injur|fractur|concuss|sprain|pain/, 'injury'],
  [/\blabs?\b|blood|test|ferritin/, 'labs'],
  [/diagnos|symptom|sick|ill/, 'diagnosis'],
];

const EMERGENCY_WORDS: Words<EmergencyTopic> = [
  [/self harm|suicid/, 'self_harm'],
  [/violen|assault|weapon/, 'violence'],
  [/allerg|anaphyl/, 'allergic_reaction'],
  [/chok/, 'choking'],
  [/heat/, 'heat_illness'],
  [/collaps|breathing|heart|seizure|stroke|unconscious|faint/, 'collapse'],
];

const topicOf = <T>(said: unknown, words: Words<T>): T | undefined => {
  if (typeof said !== 'string') return undefined;
  const plain = said.toLowerCase().replace(/[_-]+/g, ' ');
  return words.find(([pattern]) => pattern.test(plain))?.[1];
};

/** @example medicalTopic('weight loss') // 'weight_loss' */
export const medicalTopic = (said: unknown): MedicalTopic | undefined => topicOf(said, MEDICAL_WORDS);

/** @example emergencyTopic('not breathing') // 'collapse' */
export const emergencyTopic = (said: unknown): EmergencyTopic | undefined => topicOf(said, EMERGENCY_WORDS);
