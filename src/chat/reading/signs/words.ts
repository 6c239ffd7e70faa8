/** Words of the signs, grouped by what they stand for. Each is the inside of a pattern over whole words. */

/** Anybody something may happen to; "wp-07" is an athlete. */
export const WHO =
  '(?:he|she|they|him|her|hes|shes|theyre|im|someone|somebody|anyone|athlete|player|kid|girl|guy|boy|teammate|intern|person|patient|friend|roommate|child|man|woman|i|we|who|student|coach|swimmer|runner|rower|wrestler|lineman|goalie|pitcher|captain|dude|bro|people|us|freshman|daughter|son|brother|sister|[a-z]{2,3}-\\d{2})';

export const ALLERGEN =
  '(?:nuts?|peanuts?|peanut butter|pb|almonds?|cashews?|walnuts?|pecans?|pistachios?|hazelnuts?|tree nuts?|dairy|milk|cheese|eggs?|sesame|tahini|soy|wheat|gluten|fish|shellfish|shrimp|it|one|the bar|bar|cookie|something|allergen|wrong bar|wrong one)';

/** Allergens by name alone. */
export const NAMED_ALLERGEN =
  '(?:nuts?|peanuts?|pb|almonds?|almond butter|cashews?|walnuts?|pecans?|pistachios?|hazelnuts?|dairy|milk|cheese|yogurt|eggs?|sesame|tahini|soy|wheat|fish|shellfish|shrimp|allergens?)';

/** Ate, was given, touched: how it got in. */
export const ATE =
  '(?:ate|eaten|eats|swallowed|drank|bit into|bit|bitten|took a bite|had a bite|tasted|got into|licked|just had|was given|got fed|was served|exposed to|came in contact with)';

export const AIRWAY = '(?:throats?|tongues?|lips?|mouth|gums|airways?|windpipe|uvula)';
export const FACE = '(?:face|eyes?|eyelids?|cheeks?|neck|ears?|chin|jaw|nose|forehead)';
export const SWELLS =
  '(?:swell\\w*|swollen|swole|puff(?:y|ing|ed|s)?|puffiness|balloon\\w*|blown up|blow(?:s|ing)? up|blew up|bulg\\w*|inflat\\w*)';
export const FEELS =
  '(?:itch\\w*|scratchy|tingl\\w*|numb\\w*|tight\\w*|weird|funny|strange|odd|fuzzy|burning|prickl\\w*|clos(?:e|es|ed|ing)|constrict\\w*|lump|stinging|stings|heavy|thick|fat|huge|bigger|small(?:er)?|narrow\\w*|shrink\\w*)';

/** Parts that hurt on people only. */
export const BODY_SURE =
  '(?:knees?|ankles?|hips?|shoulders?|shins?|hamstrings?|hammy|foot|feet|calf|calves|quads?|groin|wrists?|elbows?|achilles|ribs?|collarbone|toes?|thighs?|thumbs?|fingers?|knuckles?|heels?|tendons?|ligaments?|glutes?|biceps?|triceps?|lower back|upper back|stomach|tummy|belly|abdomen|tooth|teeth|jaw|lungs?)';
export const BODY =
  '(?:knee|ankle|hip|back|shoulder|shin|hamstring|foot|feet|leg|calf|quad|groin|wrist|elbow|neck|stomach|tummy|belly|head|arm|hand|finger|toe|muscle|muscles|achilles|joint|joints|rib|ribs|tooth|ear|throat|gut|abdomen|thigh|thumb|heel)';
export const HURTS =
  '(?:pulled|tweaked|strain(?:ed)?|sprain\\w*|hurts?|hurting|injur\\w*|sore|twisted|tore|torn|tear|pains?|painful|aches?|aching|achy|swollen|swelling|broke|broken|fractur\\w*|jammed|bruis\\w*|cramp\\w*|numb|stiff|popped|dislocat\\w*|infected|surgery|rolled|smashed|banged|killing me|blister\\w*)';

export const DOSED =
  '(?:creatine|caffeine|iron|melatonin|vitamin [a-z0-9]+|vitamins?|vit [a-z0-9]+|magnesium|zinc|omega 3s?|fish oil|ashwagandha|beta alanine|bcaas?|collagen|ibuprofen|advil|tylenol|aspirin|salt tablets?|sodium tablets?|electrolytes?|pre ?workout|pre work ?out|supplements?|probiotics?|insulin|calcium|potassium|l theanine|glutamine|hmb|nitrate|bicarb|sodium bicarbonate|turmeric pills?|folate|folic acid|biotin|cbd|[a-z]+ pills?|[a-z]+ supplement|[a-z]+ tablets?)';

export const CHEMICAL =
  '(?:bleach|clean(?:er|ers|ing (?:fluid|spray|product|products|solution|stuff|chemicals?|supplies))|sanitiz\\w*|degreaser|(?:laundry |dishwasher |tide )?pods?|detergent|bug spray|paint thinner|dish ?soap|soap|chemicals?|lye|ammonia|drain (?:opener|cleaner)|antifreeze|rat poison|pesticide|insecticide|battery|batteries|magnets?|windex|peroxide|gasoline|lighter fluid|rubbing alcohol|glass|metal)';
