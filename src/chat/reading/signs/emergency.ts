import type { Lexed } from '../lexed.ts';
import { isCalm } from './calm-words.ts';
import { ALLERGIC_REACTION } from './emergency/allergic-reaction.ts';
import { BLEEDING } from './emergency/bleeding.ts';
import { CALL_FOR_HELP } from './emergency/call-for-help.ts';
import { CHOKING } from './emergency/choking.ts';
import { COLLAPSE } from './emergency/collapse.ts';
import { DIABETIC } from './emergency/diabetic.ts';
import { FIRE_OR_GAS } from './emergency/fire-or-gas.ts';
import { HEART } from './emergency/heart.ts';
import { HEAT_ILLNESS } from './emergency/heat-illness.ts';
import { NOT_BREATHING } from './emergency/not-breathing.ts';
import { POISONING } from './emergency/poisoning.ts';
import { SEIZURE } from './emergency/seizure.ts';
import { SELF_HARM } from './emergency/self-harm.ts';
import { SEVERE_INJURY } from './emergency/severe-injury.ts';
import { STROKE } from './emergency/stroke.ts';
import { SUDDEN_ILLNESS } from './emergency/sudden-illness.ts';
import { VIOLENCE } from './emergency/violence.ts';
import { HABIT, withoutIdioms } from './idioms.ts';

/** What somebody in danger writes, or somebody beside them. The first topic that fits is named. */
const TOPICS: readonly (readonly [topic: string, signs: readonly RegExp[]])[] = [
  ['bleeding', BLEEDING],
  ['seizure', SEIZURE],
  ['heat_illness', HEAT_ILLNESS],
  ['choking', CHOKING],
  ['self_harm', SELF_HARM],
  ['poisoning', POISONING],
  ['allergic_reaction', ALLERGIC_REACTION],
  ['not_breathing', NOT_BREATHING],
  ['collapse', COLLAPSE],
  ['heart', HEART],
  ['stroke', STROKE],
  ['fire_or_gas', FIRE_OR_GAS],
  ['severe_injury', SEVERE_INJURY],
  ['diabetic', DIABETIC],
  ['violence', VIOLENCE],
  ['sudden_illness', SUDDEN_ILLNESS],
  ['call_for_help', CALL_FOR_HELP],
];

/** The kind of emergency that is told of, if any. Wins over every other reading and errs toward an emergency. */
export function emergencyTopic({ said, typed }: Lexed): string | undefined {
  return topicIn(said) ?? (typed === said ? undefined : topicIn(typed));
}

function topicIn(said: string): string | undefined {
  if (isCalm(said)) return undefined;
  // Most messages show no sign at all; only one that does is looked at again without its turns of phrase.
  if (signIn(said) === undefined) return undefined;
  return signIn(withoutIdioms(said).replace(HABIT, ' ; '));
}

const signIn = (said: string): string | undefined =>
  TOPICS.find(([, signs]) => signs.some((sign) => sign.test(said)))?.[0];

/** The text of every pattern. */
export const EMERGENCY_SOURCES: readonly string[] = TOPICS.flatMap(([, signs]) =>
  signs.map((sign) => sign.source),
);
