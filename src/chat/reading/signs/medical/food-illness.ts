const ILL =
  'throw(?:s|ing|n)? up|threw up|puk(?:e|es|ed|ing)|vomit\\w*|sick|nause\\w*|queasy|diarrh\\w*|(?:stomach|tummy|belly) (?:hurts?|aches?|cramps?|pain)|stomachache|cramps|the runs|hives|itch\\w*|rash|food poison\\w*';
const ONE = 'the|that|this|those|these|a|an|one of|some|our|your|two|\\d+|yesterdays|todays';
/** What is told of a habit, or of training, is another matter. */
const NO_HABIT =
  '(?!.* (?:every|each|all|always|whenever|everything|meals?|on purpose|purposely|myself|herself|himself|themselves|usually|often|again|when i eat|lose|weight|fat|guilt\\w*|binge\\w*|game|games|practice|lift|lifting|workout|run|race|training|match|sprints?) )';

/** Ill after one thing that was eaten: a reaction, or the food. */
export const FOOD_ILLNESS: readonly RegExp[] = [
  new RegExp(
    `^${NO_HABIT}.* (?:${ILL}) (?:[a-z0-9]+ ){0,3}(?:after|from|since|off|because of) (?:i |he |she |they |we )?(?:just )?(?:eating |ate |eats |had |having |finishing )*(?:${ONE}) `,
  ),
  new RegExp(
    `^${NO_HABIT}.* (?:ate|had|after|from) (?:eating |ate )?(?:${ONE}) (?:[a-z0-9]+ ){0,5}(?:and |now |then )*(?:[a-z]+ ){0,4}(?:${ILL}) `,
  ),
  / (?:bars?|bites?|parfaits?|muffins?|rolls?|food|snacks?|squares?|smoothies?|cups?) (?:[a-z]+ )?(?:made|makes|making|got) (?:me|him|her|us|them|people|[a-z]+) (?:[a-z]+ )?(?:sick|ill|puke|vomit|throw up) /,
];
