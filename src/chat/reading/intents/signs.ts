import { EMERGENCY_SOURCES } from './emergency.ts';
import { MEDICAL_SOURCES } from './medical.ts';

/** The text of all emergency and medical patterns. */
export const signSources = (): readonly string[] => [...EMERGENCY_SOURCES, ...MEDICAL_SOURCES];
