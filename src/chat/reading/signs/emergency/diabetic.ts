import { near } from '../near.ts';

/** Somebody's sugar, and not the sugar in a bowl. */
const SUGAR =
  '(?:diabet\\w*|type (?:1|one)|blood sugars?|(?:my|his|her|their|athletes?) (?:sugars?|glucose|bg|cgm)|insulin|hypoglyc\\w*|glucose monitor|insulin pump)';

export const DIABETIC: readonly RegExp[] = [
  near(
    SUGAR,
    'shaky|shaking|shakes|trembl\\w*|confus\\w*|sweat\\w*|clammy|pass(?:ing|ed)? out|faint\\w*|unconscious|unresponsive|out of it|wont wake|not waking|slurr\\w*|seiz\\w*|limp|incoherent|vomit\\w*|throwing up|collaps\\w*|not making sense|disoriented|acting (?:weird|strange|drunk|off|funny)|fruity breath|reaction|shock|coma|crashed|crashing',
    7,
  ),
  / (?:glucose|blood sugar|cgm|glucometer|meter) (?:[a-z]+ )?(?:reads?|says?|said|shows?|reading|is reading) (?:lo|low|hi|high) | (?:overdid|overdosed|double|doubled|twice|too much|extra|wrong dose of|accidentally took) (?:[a-z]+ ){0,3}insulin | insulin (?:[a-z]+ ){0,3}(?:overdose|twice|too much|double) /,
  // Low enough, or high enough, that minutes count. From memory: under 54 mg/dL and over 300 mg/dL.
  / (?:blood sugars?|(?:my|his|her|their) (?:sugars?|glucose|bg)|glucose|cgm) (?:[a-z]+ ){0,4}(?:[1-4]\d|5[0-3]|[3-9]\d\d|[12]\.\d) (?!g |grams?|cups?|oz|lbs?|kg|ml|%|mg (?:of )?sugar)/,
];
