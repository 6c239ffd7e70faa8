import { near } from '../near.ts';

/** Words of the body, of treatment and of what people take that no kitchen uses, one is enough. */
const ALONE =
  `lupus|colonoscop\\w*|endoscop\\w*|toothaches?|tooth ache|ulcers?|murmurs?|heartbeats?|hormon\\w*|hot flash\\w*|hot flush\\w*|pain ?killers?|pain meds?|pain relie\\w*
  |remed(?:y|ies)|vap(?:es|ing)|weed|marijuana|nicotine|indigestion|reflux|blisters?|blistered|hiccups|earaches?|ear infection|sinus\\w*|congest(?:ed|ion)|runny nose|stuffy nose|sneez\\w*
  |cough(?:s|ed|ing)?|phlegm|mucus|hay fever|wheezy|bronchitis|pneumonia|tonsil\\w*|swollen glands|lymph nodes?|shingles|ringworm|athletes foot|warts?|psoriasis|hernias?|arthritis|tend[io]n\\w*|sciatica
  |bunions?|numbness|pins and needles|palpitat\\w*|arrhythmia|pacemaker|afib|hemorrhoids?|bowel movements?|poop\\w*|pooped|diabetic|dialysis|transplant|lupus|fibromyalgia|chronic pain|chronic fatigue
  |autism|narcolep\\w*|concerta|therap(?:y|ist|ists)|psychiatr\\w*|psycholog\\w*|grief|grieving|self esteem|body image|body dysmorph\\w*|body goals?|wisdom (?:teeth|tooth)|root canal|dentist|orthodont\\w*|jaw (?:wired|broken|surgery)
  |vasectomy|vaccin\\w*|flu shot|antiviral\\w*|antifungal\\w*|steroids?|testosterone|estrogen|cortisol|hrt|growth hormone|peptides? injections?|iv therapy|saline drip|electrolyte imbalance|low sodium diet|hyponatremia
  |acl|nsaids?|tums|pepcid|zofran|dayquil|nyquil|sudafed|mucinex|robitussin|gas ?x|lactaid|miralax|metamucil|stool softeners?|suppositor\\w*|laxative|ozempic|glp ?1|appetite suppressants?|bod ?pod|inbody|calipers?`
    .replace(/\s+/g, ' ')
    .replace(/ \|/g, '|');

const STARVED =
  '(?:food|anything|nothing|water|fluids?|liquids?|meals?|solids?|breakfast|lunch|dinner|it|a thing|stuff|much|what i eat|whatever i eat)';

/** Illness, told without its name. */
export const HEALTH_WORDS: readonly RegExp[] = [
  new RegExp(` (?:${ALONE}) `),
  new RegExp(` (?:keep|keeping|kept|hold|holding|get|getting) (?:[a-z]+ )?${STARVED} (?:[a-z]+ )?down `),
  / (?:nothing|anything|food|water|everything) (?:i eat |he eats |she eats )?(?:will |wont |doesnt |isnt |is |not )*(?:stay|stays|staying|staying) down | (?:food|everything|anything|it|lunch|dinner|breakfast|water|meals?|stuff) (?:i eat |i ate |i drink |she eats |he eats )?(?:just )?(?:comes?|came|coming|goes) (?:right |straight |all )*back up /,
  / (?:bathroom|toilet|restroom|john) (?:[a-z]+ ){0,2}(?:every|all (?:day|night|morning|afternoon|evening|week)|since|constantly|\d+ times|times|after|nonstop|non stop|again and again|a lot)/,
  / (?:never|no longer) (?:feel |feels |feeling |really |even |am |im |is )*hungry | (?:not|isnt|arent|dont feel|doesnt feel) (?:[a-z]+ )?hungry (?:anymore|any more|lately|at all|ever|these days|for days) /,
  / (?:make|makes|making|made|get|gets|got|getting) (?:me|him|her|us|them|people|everyone|everybody|half the [a-z]+|the (?:team|girls|guys|players|athletes)|my [a-z]+) (?:all |really |so |violently |super )?(?:sick|ill|queasy|dizzy|bloated|gassy|nauseous|break out|itch\w*|throw up|vomit|puke) /,
  / (?:practice|practicing|play|playing|train|training|lift|lifting|run|running|compete|competing|race|swim|work out) (?:while |when |if |being )?(?:im |hes |shes |i am )?(?:sick|ill|with a (?:fever|cold|cough|concussion)|injured|hurt) | sick (?:day|days|since|with|from|for (?:a|two|three|\d)|again|all|and (?:cant|throwing|weak|tired)) /,
  / feel(?:s|ing)? (?:really |so |very |super |kinda |pretty |just |always |like )*(?:low|down|empty|numb|sad|lost|alone|overwhelmed|burned out|burnt out|unmotivated|hopeless|off|weird|weak|awful|terrible|like crap|like death|horrible|miserable|yucky|rough|faint|foggy|run down) (?:lately|all|today|and|since|these|every|for|about|when|after|this|at|during|so|but|because|$)/,
  / (?:whats|what is|something|anything) wrong with (?:me|my (?!bars?|bites?|batch|recipe|dough|mix|oven|app|phone|math|count|order)[a-z]+|him|her) /,
  / see(?:ing|s)? (?:stars|spots|double) /,
  / (?:drink|drinking|drank|drinks) (?:[a-z]+ ){0,3}(?:alcohol|beers?|wine|liquor|booze|vodka|tequila)| alcohol (?:before|after|and|affect\w*|the night) | smok(?:e|ed|es|ing) (?:[a-z]+ )?(?:weed|pot|cigarettes?|before|a joint|marijuana) | (?:is|was|got|getting|been) (?:drunk|high|stoned) /,
  near('numb\\w*|tingl\\w*', 'fingers?|toes?|feet|foot|legs?|arms?|thighs?|hands?', 3),
  / (?:my|her|their) (?:menstrual |monthly )?cycle (?!count|class|time on)/,
  // Somebody's own inside, whatever is said of it.
  / (?:my|his|her|their) (?:[a-z]+ )?(?:stomach|tummy|belly|guts?|bowels?|insides|knees?|ankles?|hips?|shins?|hamstrings?|calf|calves|quads?|groin|wrists?|elbows?|throat|skin|liver|lungs?|teeth|tooth|gums?|pee|poop|urine|hormones?|bones?|joints?|muscles?|ovaries|bladder|scalp|sinuses) /,
  / bruis\w* easily | (?:pale|bruis\w*) (?:lately|all the time|and (?:tired|weak|dizzy|cold)) | (?:sore|achy|stiff|sick|ill|congested) (?:all the time|all day|for (?:days|weeks)|constantly|every day) | (?:always|keep|keeps|constantly) (?:getting|catching|having) (?:a )?(?:colds?|sick|ill|cramps?|headaches?|hurt) /,
  / (?:sleep aid|sleeping aid|urine test|dehydration test|blood drive|side stitch|chest cold|mood swings?|bad breath(?! mint)|skin (?:problems?|issues?)|digestive enzymes?|inflammation markers?|braces (?:tightened|hurt|on|off)|soft foods? diet|liquid diet|stomach virus|(?:celiac|coeliac|thyroid|kidney|heart|liver) diagnosis|allergy (?:shots?|test\w*|doctor)|(?:iron|vitamin|b12) (?:infusions?|shots?|injections?)|iv (?:for|drip|fluids?|hydration)|(?:lactose|lactase|salt|sodium) (?:pills?|tabs?|tablets?)|outgrow (?:my|an?|the|his|her) .*allerg\w*|protein in (?:my |the )?urine|nails (?:are|is) brittle|brittle nails) /,
  / (?:cant|cannot|trouble|hard to|hard time|problems?) (?:digest\w*|recover\w*|sleep\w*|focus\w*|concentrat\w*|chew\w*|poop\w*|peeing|pee) | (?:gas|gassy|bloat\w*) (?:after|from|when) (?:eating|i|beans|milk|dairy|the|a|an|my) /,
  / (?:should|can|could|may) (?:i|he|she|we) (?:take|use|try) (?:[a-z0-9]+ ){1,4}for (?:my|a|the|his|her) (?:[a-z]+ )?(?:knees?|joints?|back|pain|cold|sleep|skin|muscles?|headache|injury|stomach|cramps?|tendon|ankle|nerves|anxiety) | (?:zinc|magnesium|vitamin c|turmeric|elderberry|ginger|melatonin|collagen|tart cherry) (?:[a-z]+ ){0,2}for (?:an? |my |the )?(?:cold|flu|sleep|inflammation|pain|soreness|insomnia|knees?|joints?|cramps?|immune\w*|anxiety|stress|nausea) /,
  / (?:im|i am|she is|shes) expecting (?!\d|about|around|more|some|the|another|a (?:delivery|call|package|truck)|you|them|people|guests|n )/,
  near(
    'heart',
    'skips?|skipping|flutter\\w*|irregular|murmur|racing|pounding|condition|problems?|issues?',
    3,
  ),
  near(
    'gums?|teeth|tooth|jaw|mouth|lips?|eyes?|ears?|nose|nostrils?|skin|scalp|nails?|throat|chest|lungs?|sinus\\w*',
    'hurts?|hurting|pain\\w*|sore|sores|aches?|aching|infect\\w*|red|dry|cracked|peeling|bleeds?|burns|burning|itch\\w*|irritated|crusty|yellow|pale|discharge|ringing|blurry|twitch\\w*',
    3,
  ),
];
