/** What a request for the clinical team is about: values of the `topic` slot of `medical`. */
export const MEDICAL_TOPICS = [
  'weight_loss',
  'dosing',
  'diagnosis',
  'injury',
  'labs',
  'disordered_eating',
  'low_energy',
] as const;
export type MedicalTopic = (typeof MEDICAL_TOPICS)[number];

/** What kind of emergency: values of the `topic` slot of `emergency`. */
export const EMERGENCY_TOPICS = [
  'allergic_reaction',
  'choking',
  'collapse',
  'heat_illness',
  'self_harm',
] as const;
export type EmergencyTopic = (typeof EMERGENCY_TOPICS)[number];
