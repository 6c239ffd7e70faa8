import { WHO } from '../words.ts';

/** Somebody threatens or hurts somebody; a glue gun and a heat gun are tools. */
export const VIOLENCE: readonly RegExp[] = [
  / (?:active shooter|gun ?shots?|gunman|school shooting|bomb threat|hostage) | (?:has|have|had|got|pulled|pulling|with|waving|holding|brought|hes got|shes got) (?:an? |the |his |her )?(?:loaded )?(?:gun|pistol|rifle|weapon|knife and) /,
  / (?:threaten\w*|attack(?:ed|ing|s)|assault\w*|stabb(?:ed|ing)|strangl\w*|raped?|punch(?:ed|ing)|beat(?:ing)? up|kidnap\w*|shot|shooting at|stalk(?:ing|ed)|following) (?:me|us|him|her|them|someone|somebody|people|everyone|my [a-z]+|an? (?:athlete|player|intern|girl|guy|kid)) (?!in the right|up on|along|through)/,
  new RegExp(
    ` ${WHO} (?:is |was |were |got |been |being |just |has )+(?:assaulted|attacked|stabbed|raped|shot at|being followed|followed home|stalked|kidnapped|abused|jumped) `,
  ),
  / (?:fight|fights|fighting|waving|swinging|lunged|chasing|threat\w*) (?:[a-z]+ ){0,6}(?:knife|knives|gun|weapon|machete) /,
  / (?:sexual|sexually|domestic) (?:assault\w*|violence|abus\w*|harass\w*|molest\w*) | (?:he|she|they|boyfriend|girlfriend|somebody|someone|dad|partner|stepdad|roommate) (?:just )?(?:hit|hits|slapped|choked|kicked|shoved|beats?|grabbed|touched|hurts?) me (?!up|with the|by|in the|back)| (?:trying|tried) to break in /,
  / (?:being|been) (?:followed|stalked|attacked|abused|threatened) (?!up|by the rule)|(?:intruder|break in happening|armed (?:man|person|guy)) /,
];
