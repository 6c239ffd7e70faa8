import { INTENT_READERS } from './intents/index.ts';
import { EMERGENCY_SOURCES } from './signs/emergency.ts';
import { MEDICAL_SOURCES } from './signs/medical.ts';

/** Every word a rule looks for: known, so that the speller leaves it alone. */
export function ruleWords(): Set<string> {
  const found = new Set<string>();
  const collect = (source: string) => {
    for (const word of source.match(/[a-z]{3,}/g) ?? []) found.add(word);
  };
  for (const { cues, rules } of INTENT_READERS) {
    for (const cue of cues) collect(cue);
    for (const [pattern] of rules) collect(pattern.source);
  }
  for (const source of [...EMERGENCY_SOURCES, ...MEDICAL_SOURCES]) collect(source);
  return found;
}
