import { both, near } from '../near.ts';
import { AIRWAY, ALLERGEN, ATE, FACE, FEELS, NAMED_ALLERGEN, SWELLS, WHO } from '../words.ts';

const UNAWARE =
  'accident|accidentally|mistake|unknowingly|didnt know|without knowing|didnt realize|didnt see';
/** An allergy on a label, a list or a table is no person. */
const ON_PAPER =
  '(?:labels?|lists?|cards?|sheets?|signs?|boards?|menus?|forms?|info|stickers?|tables?|bags?|bins?|kits?|tests?|policy|safe|friendly)';

export const ALLERGIC_REACTION: readonly RegExp[] = [
  / (?:throats?|airways?) (?:[a-z]+ ){0,5}(?:clos\w*|swell\w*|swollen|tight\w*|itch\w*|shut\w*|constrict\w*|block\w*|scratchy|puffy|weird|funny|tingl\w*|lump|numb|locking|locked)/,
  / (?:clos\w*|swell\w*|swollen|tight\w*|itch\w*|scratchy|tingl\w*) (?:[a-z]+ ){0,4}(?:throat|tongue|lips?|airway|mouth) /,
  / (?:lips?|tongue|face|eyes?|mouth|cheeks?|neck|eyelids?|hands?|whole body|body|uvula) (?:[a-z]+ ){0,6}(?:swell\w*|swollen|puff\w*|tingl\w*|blue|purple|numb|balloon\w*|itchy)/,
  / (?:swell\w*|swollen|puffy|blue|tingly) (?:[a-z]+ ){0,3}(?:lips?|tongue|face|mouth|eyes?|eyelids?) /,
  / (?:hives?|welts) /,
  / (?:anaphyla\w*|anafil\w*|anaphil\w*|anafyl\w*) /,
  / (?:epi ?pens?|epi|epis|epipens|auto ?injectors?|injectors?|epinephrine|adrenaline) /,
  / (?:allergic|allergy|bad) reactions? /,
  / (?:having|has|had|getting|think|is) (?:an? )?(?:[a-z]+ )?reaction(?:s)? /,
  / reacting (?:[a-z]+ )*(?:to|bad|badly) /,
  / (?:ate|eaten|had|swallowed|eating|took a bite|bit into|tasted|drank) (?:[a-z]+ ){0,6}(?:allergic|allergy|allergen) /,
  new RegExp(
    ` (?:allergic|allergy|allergies|anaphylactic)(?: [a-z]+){0,8} (?:just )?(?:ate|eaten|swallowed|drank|bit|tasted|got into|had (?:an? |some |the )?${ALLERGEN}) `,
  ),
  new RegExp(
    ` (?:ate|eaten|swallowed|bit into) (?:[a-z]+ ){0,3}${ALLERGEN} (?:[a-z]+ ){0,6}(?:allergic|allergy|reaction|feels?|itch\\w*|swell\\w*|tight|help|epi\\w*) `,
  ),
  / (?:accident\w*|mistake\w*|wrong|oops|mixed up) .*(?:allergic|allergy|allergies|epi\w*) (?!label|card|list|sheet|board|menu|sign)/,
  new RegExp(
    ` (?:gave|fed|served|handed|ate|eaten|had) .*(?:allergic|allergy|allergies) (?!${ON_PAPER}).*(?:accident\\w*|mistake|oops|what now|what do (?:i|we) do|help) `,
  ),
  // Somebody with an allergy who took something in, and somebody who sees that it was wrong.
  new RegExp(
    ` (?:allergic|allergy|allergies) (?!${ON_PAPER}).*(?:took|ate|eaten|grabbed|got|tried|tasted|drank|picked up|opened|given|had (?:an?|some|the|half|one)) .*(?:accident\\w*|mistake\\w*|didnt know|did not know|unknowingly|without knowing|wrong (?:one|bars?|bites?|bag|rolls?|muffins?|snacks?|cups?|parfaits?|shakes?|smoothies?)) `,
  ),
  new RegExp(
    ` (?:allergic|allergy|allergies) (?!${ON_PAPER}).*(?:took|ate|eaten|grabbed|tried|tasted|drank|swallowed) .*(?:what now|what do (?:i|we) do|help (?:me|us|now|please|pls|quick)?) `,
  ),
  / allerg\w* .*(?:spots|blotch\w*|cough\w*|itch\w*|vomit\w*|dizzy|breath\w*|swell\w*|swollen|throat|pale|flushed|sweating|shaking|turning red|all red) /,
  / (?:spots|blotch\w*|cough\w*|itch\w*|vomit\w*|swell\w*|red|puffy) .*(?:after|from) (?:eating|he ate|she ate|i ate|the|a) .*allerg\w* /,
  / (?:tongue|lips?|face|throat|neck|eyes?) (?:[a-z]+ ){0,3}(?:big|bigger|huge|fat|thick|growing|blown up|blowing up) /,
  / (?:sting|stung) .*(?:swell\w*|swollen|allergic|breath\w*|hives|dizzy)/,
  / (?:vomit\w*|throwing up|puking|rash|flushed|itch\w*) (?:[a-z]+ ){0,4}(?:and|with) (?:[a-z]+ )?(?:hives|swell\w*|wheez\w*|trouble breathing|breath\w*|dizz\w*|itch\w*) /,
  / itch\w* (?:all over|everywhere|mouth|after (?:eating|the|a|he|she|i)) /,
  near(AIRWAY, SWELLS),
  near(AIRWAY, FEELS),
  near(FACE, SWELLS),
  near('hands?|feet|arms?|whole body', 'swelling|swollen|swelled'),
  near(
    `${FACE}|skin|arms?|chest|body|legs|stomach`,
    'blotch\\w*|splotch\\w*|welts|break(?:s|ing)? out|broke out|broken out|bumps|hives',
  ),
  near(
    'rash|bumps|spots|blotch\\w*|flushed|turning red|all red|red all over|itch\\w*|wheez\\w*',
    'after eating|after (?:the|a|an|one|that|this|he|she|i|having|trying) (?:bar|bite|snack|smoothie|muffin|ate|had|nuts?|peanuts?|milk|egg|shake|parfait|cookie)|ate',
    6,
  ),
  both(ATE, `allerg\\w*|anaphyl\\w*`),
  // What was taken in, and what the body does.
  both(
    `${ATE}|after (?:the|a|an|eating|having|that|one|my|his|her)`,
    'breaking out|broke out|breaks out|in bumps|in hives|in spots|in welts|skin is (?:red|burning|itch\\w*)',
  ),
  new RegExp(
    ` ${NAMED_ALLERGEN} (?:[a-z]+ )?(?:exposure|exposed|ingestion|ingested) | (?:accidental|exposed to|ingested) (?:[a-z]+ )?${NAMED_ALLERGEN} `,
  ),
  new RegExp(` free (?:[a-z]+ ){0,6}${NAMED_ALLERGEN} (?:[a-z0-9-]+ ){0,6}${ATE} `),
  new RegExp(
    ` (?:realized|realised|found out|turns out|apparently|noticed) (?:[a-z]+ ){0,4}(?:there (?:was|were|are|is)|had|has|contains?|contained|were|was) (?:[a-z]+ ){0,4}${NAMED_ALLERGEN} .*allerg`,
  ),
  / (?:gave|fed|served|handed) (?:[a-z0-9-]+ ){1,8}(?:who|that|hes|shes|who is|whos) (?:[a-z]+ ){0,2}allerg/,
  /^ (?:an? |possible |weird |some |bad |maybe )*reaction (?:to|from|after) /,
  near(`${ATE}|eat|eating|had|gave|fed|served`, UNAWARE, 7),
  new RegExp(
    ` (?:gave|fed|served|handed|sold) (?:[a-z0-9-]+ ){0,4}(?:allergy|allergic) (?:[a-z]+ ){0,4}(?:wrong|${NAMED_ALLERGEN}|regular) `,
  ),
  new RegExp(
    ` ${ATE} (?:[a-z]+ ){0,3}${NAMED_ALLERGEN} (?:[a-z]+ ){0,4}(?:what do|what should|help|now what|what now|emergency|feel\\w*|sick|scared|panic\\w*) `,
  ),
  new RegExp(
    `^ (?:help|sos|urgent|omg|please|pls|quick|hurry) (?:help |me |please |pls |quick )*(?:an? |the )?${NAMED_ALLERGEN} (?:allergy )?$|^ ${NAMED_ALLERGEN} (?:allergy )?(?:help|emergency|sos|urgent) (?:me |please |pls |now |quick )*$`,
  ),
  / (?:allergies|allergy) (?:is |are )?(?:acting up|flaring|flared|kicking in|going off) /,
  / feel(?:s|ing)? (?:like )?(?:a |an )?impending doom | (?:sense|feeling) of (?:impending )?doom /,
  new RegExp(` ${WHO} (?:[a-z]+ )?(?:reacted|reacts|is reacting|having a reaction) (?:to|after|from|badly) `),
];
