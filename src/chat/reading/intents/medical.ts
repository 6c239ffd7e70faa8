import type { MedicalTopic } from '../../topics.ts';
import type { Lexed } from '../lexed.ts';

type Signs = readonly (readonly [pattern: RegExp, topic: MedicalTopic])[];

/** Parts of words that make the signs below worth reading. */
const TRIGGER =
  /deserve|pulled|strain|tweak|rolled|twist|heavy|let myself|allow myself|warfarin|thinner|statin|metformin|coumadin|zoloft|lexapro|prozac|lithium|a day|per day|fattening|should i take|weight|lose|losing|lean|skinny|thin|fat|cut to|drop|diet|period|cycle|dizzy|light ?head|faint|fractur|injur|hurt|pain|ache|sore|sprain|torn|tear|acl|surger|lab|blood|ferritin|iron|anemi|vitamin|throw|threw|puke|purg|binge|bing|vomit|skip|meals|disorder|anorex|bulimi|orthorex|body|ibuprofen|advil|tylenol|med|meds|drug|pill|antibio|antidep|prednis|inhal|dose|dosage|dosing|how much|how many|insulin|diabet|sugar|concus|head|pregnan|nursing|breastfe|celiac|coeliac|intoleran|stomach|rash|diarr|poison|tired|fatigue|cold|calorie|acl|mri|xray|x ray|scan|scared|afraid|guilt|laxativ|sauna|weigh|heart|fast|kidney|liver|cholest|pressure|depress|anxi|stress|sad|birth|diagnos|symptom|red s|reds|eating|urine|pee|doctor|prescri|sick|fever|flu|covid|nause|constip|bloat|cramp|migraine|headache|asthma|eczema|thyroid|hormone|testoster|cortisol|swollen|swelling|wound|infect|heal|rehab|allerg|bmi|underweight|overweight|obes|bulk|muscle|gain|shred|rip|tone|abs|starv|hungry|restrict|count|amenorr|pcos|adhd|vyvans|adderall|accutan|steroid|sick|ill|insomnia|sleep|therap|counsel|crohn|colitis|ibs|reflux|gerd|ulcer|hernia|bone|density|low energy|underfuel|energy avail|amenor|self|dehydrat|iv|tingl|numb|cough|throat|virus|mono|eat nothing|not eating|stopped eating|hate|ugly|gross|disgust|swell|bruise|burn|cut my|finger|stitches|tetanus|test result|results|supposed to take|shed|pound|kilo|slim|get down|broke|only eat|caffeine|creatine|melatonin|magnesium|zinc|omega|supplement/;

const BODY =
  '(?:knee|ankle|hip|back|shoulder|shin|hamstring|foot|feet|leg|calf|quad|groin|wrist|elbow|neck|stomach|tummy|belly|head|arm|hand|finger|toe|muscle|muscles|achilles|joint|joints|rib|ribs|tooth|ear|throat|gut|abdomen|thigh|thumb|heel)';
const DOSED =
  '(?:creatine|caffeine|iron|melatonin|vitamin [a-z0-9]+|vitamins?|vit [a-z0-9]+|magnesium|zinc|omega 3s?|fish oil|ashwagandha|beta alanine|bcaas?|collagen|ibuprofen|advil|tylenol|aspirin|salt tablets?|sodium tablets?|electrolytes?|pre ?workout|pre work ?out|supplements?|probiotics?|insulin|calcium|potassium|l theanine|glutamine|hmb|nitrate|bicarb|sodium bicarbonate|turmeric pills?|folate|folic acid|biotin|cbd|[a-z]+ pills?|[a-z]+ supplement|[a-z]+ tablets?)';

/** Questions for the physician, the dietitian in person or the athletic trainer. Errs toward handing over. */
const SIGNS: Signs = [
  [
    / deserve (?:to )?(?:eat|food|a meal|dinner|lunch|breakfast) | (?:dont|doesnt) deserve to /,
    'disordered_eating',
  ],
  [
    / (?:let|allow|letting|allowing) (?:myself|herself|himself) (?:to )?(?:only )?(?:have|eat) /,
    'disordered_eating',
  ],
  [
    / (?:havent|hasnt|not|didnt) (?:been )?(?:eaten|eat|eating) (?:[a-z0-9]+ ){0,5}(?:days?|week) /,
    'disordered_eating',
  ],
  [
    / (?:skipped|skipping|skip) (?:[a-z]+ ){0,3}(?:breakfast|lunch|dinner|meals?) (?!line|prep|bars?)/,
    'low_energy',
  ],
  [/ \d{3,4} (?:calories|calorie|kcals?|cals?) (?:a|per|each) day /, 'weight_loss'],
  [
    / (?:be|get|getting|look|looking|become|am i|im|i am|feel) (?:more |so |too |really |much )*(?:thin|thinner|skinny|skinnier|heavy|slim|slimmer|leaner|chubby) /,
    'weight_loss',
  ],
  [/ (?:fattening|least fattening|slimming) /, 'weight_loss'],
  [
    new RegExp(
      ` (?:pulled|strained|tweaked|rolled|twisted|tore|popped|jammed) (?:my|his|her|a|the) (?:[a-z]+ )?${BODY} `,
    ),
    'injury',
  ],
  [
    / (?:take|taking|takes|am on|im on) (?:[a-z]+ )?(?:warfarin|blood thinners?|statins?|metformin|coumadin|zoloft|lexapro|prozac|lithium|levothyroxine) /,
    'dosing',
  ],
  [new RegExp(` how many (?:mg|milligrams|grams|g|pills|tablets|scoops) (?:of )?${DOSED} `), 'dosing'],
  [
    / should (?:i|he|she|we|they|athletes) (?:be )?(?:take|taking|start) (?:an? |some |my )?(?:iron|zinc|magnesium|calcium|vitamin [a-z0-9]+|salt|caffeine|melatonin) (?:pills?|tablets?|supplements?) /,
    'dosing',
  ],
  [
    / (?:throw|throwing|threw|thrown|throws) (?:it |them |everything |all |food |that |this |my )*up (?!the|a |some|on|to|for)/,
    'disordered_eating',
  ],
  [
    / (?:i|me|he|she|to|can|we) (?:[a-z]+ ){0,3}(?:get|cut|drop|go|be|come) (?:back )?down to \d{2,3} (?!bars?|bites?|pieces|g |f |degrees|people|muffins)/,
    'weight_loss',
  ],
  [
    / only (?:eat|eats|eating|ate) (?:lettuce|salads?|fruit|veg\w*|one|once|celery|a|1|rice cakes?|protein bars?) /,
    'disordered_eating',
  ],
  [
    / (?:have|has|had|got|getting|catch|caught|with|fighting) (?:a |the |this )?(?:bad |nasty )?(?:cold|flu|fever|virus|bug|covid|mono|strep|sore throat|cough) (?!brew|water|milk|storage|bars?|cuts?|room|oats)/,
    'diagnosis',
  ],
  [
    / (?:eating disorders?|disordered eating|anorex\w*|bulimi\w*|orthorex\w*|bing(?:e|es|eing|ing|ed)|purg(?:e|es|ed|ing)|arfid) /,
    'disordered_eating',
  ],
  [
    / (?:throw\w*|threw|puk\w*|vomit\w*|thrown|sick) (?:it |them |everything |food )?(?:up )?(?:[a-z]+ ){0,3}(?:after|when|every time|whenever|on purpose|everything|my) /,
    'disordered_eating',
  ],
  [
    / make (?:my|her|him|them) ?sel\w+ (?:[a-z]+ )?(?:throw up|puke|vomit|sick) | mak\w+ (?:myself|herself|himself) (?:throw|puke|vomit|sick)/,
    'disordered_eating',
  ],
  [
    / (?:skip\w*|miss\w*|avoid\w*|not eating|restrict\w*|limit\w*) (?:[a-z]+ ){0,3}(?:meals?|food|eating|breakfast|lunch|dinner|calories|carbs) (?:[a-z]+ ){0,6}(?:lean|lose|weight|thin|light|skinny|fat|race|all|every|days?|weeks?)/,
    'disordered_eating',
  ],
  [
    / (?:isnt|hasnt|havent|not|wont|doesnt|dont|stopped|stop|refus\w+|barely|never|quit|hardly) (?:been |want to |wanna |like |really |to )*(?:eat|eating|eats|ate) (?:[a-z]+ ){0,3}(?:all|any\w*|for|since|days?|much|enough|at all|meals?|lunch|dinner|this week|week|today|nothing) /,
    'disordered_eating',
  ],
  [/ (?:dont|doesnt|didnt|do not) (?:want to|wanna|feel like) eat\w* /, 'disordered_eating'],
  [
    / (?:scared|afraid|terrified|guilty|guilt|ashamed|anxious|panic\w*|stressed|disgusted|fear) (?:[a-z]+ ){0,4}(?:eat\w*|food|carbs?|fat|sugar|weight|meals?|bread|gain\w*|ate) /,
    'disordered_eating',
  ],
  [
    / (?:hate|hating|disgusted (?:by|with)|ashamed of|dont like|ugly) (?:[a-z]+ ){0,2}(?:body|myself|stomach|thighs|how i look|my legs) | feel (?:so )?(?:fat|huge|gross|disgusting) | (?:am i|im|i am|too|so|getting|look|looking) (?:too |so |really |getting )?fat \??/,
    'disordered_eating',
  ],
  [/ (?:laxativ\w*|diuretic\w*|water pills?|diet pills?|ozempic|semaglutide|wegovy) /, 'disordered_eating'],
  [
    / (?:obsess\w*|compuls\w*) (?:[a-z]+ ){0,3}(?:food|eat\w*|calor\w*|weight|exercise) | (?:exercis\w*|running|work(?:ing)? out|run) (?:[a-z]+ ){0,3}(?:burn|earn|make up for) (?:[a-z]+ ){0,3}(?:off|food|calor\w*|ate|bar|it) | (?:burn|work) (?:it |this |that |them )?off /,
    'disordered_eating',
  ],
  [
    / (?:count\w*|track\w*) (?:[a-z]+ ){0,2}(?:every calorie|all my calories|calories) (?:all|every|obsess|to lose|to cut)/,
    'disordered_eating',
  ],
  [
    / los(?:e|ing|es|t) (?:[a-z0-9]+ ){0,4}(?:weight|lbs?|pounds?|kgs?|kilos?|fat|body ?fat|belly|stone|inches|size) /,
    'weight_loss',
  ],
  [
    / (?:drop|shed|cut|cutting|dropping|shedding|burn|burning|sweat out|sweat off|melt) (?:[a-z0-9.]+ ){0,3}(?:weight|fat|body ?fat|belly fat|kgs?|kilos?|lbs?|pounds?) (?!(?:of )?(?:each|every|the (?:bar|slab|bag|batch)|per|oats|flour|butter|from (?:the )?(?:bag|batch)))/,
    'weight_loss',
  ],
  [
    / (?:how much|what) weight .*los(?:e|ing) | weight (?:should|do|can|to|could|must) (?:[a-z]+ ){0,3}lose /,
    'weight_loss',
  ],
  [
    / (?:weight ?loss|fat ?loss|slim down|slimming|lean out|leaning out|get lean|getting lean|leaner for|get (?:skinny|thin|shredded|ripped|skinnier|thinner|cut|smaller)|skinny|skinnier|thinner (?:body|legs)|tone up|shredded|body recomp\w*) /,
    'weight_loss',
  ],
  [
    / (?:make|making|made|miss|missed) weight (?!of)| weigh ?in | weigh ins? | sauna | sweat suit | water (?:load|cut)\w* | weight (?:class|cut|cutting) /,
    'weight_loss',
  ],
  [
    / (?:diet|dieting|keto|intermittent|crash diet|calorie deficit|deficit|caloric deficit) (?!coke|soda|pepsi)/,
    'weight_loss',
  ],
  [
    / (?:fast|fasting|fasted|starv\w*) (?:[a-z0-9]+ ){0,3}(?:days?|hours?|week|before|to lose|myself) /,
    'weight_loss',
  ],
  [
    / (?:cut|get|down|back|go|drop) (?:down )?to \d+ ?(?:lb|lbs|pounds|kg|kgs|kilos) (?!bag|of )/,
    'weight_loss',
  ],
  [
    / (?:gain|put on|add) (?:[a-z0-9]+ ){0,3}(?:weight|muscle|lbs?|pounds?|kg|mass) (?!of )| bulk(?:ing)? (?:up|diet|phase|plan) | (?:bulk|bulking) (?:for|calories)/,
    'weight_loss',
  ],
  [
    / (?:how much|what) (?:should i|do i|should he|should she|would i) weigh | (?:ideal|goal|target|healthy|right|normal|race|fighting|best) (?:body )?(?:weight|body ?fat|bmi) /,
    'weight_loss',
  ],
  [
    / (?:body ?fat|bmi|body comp\w*|dexa|skinfold\w*|body composition|underweight|overweight|obese|obesity) /,
    'weight_loss',
  ],
  [
    / (?:how many|how much|what|many) (?:calories|kcal|cals|energy) (?:[a-z]+ ){0,4}(?:i|me|he|she|my|we|eat|a day|per day|need|burn|day|to (?:lose|cut|gain)) (?!.*(?:in (?:a|the|one) |bar have))/,
    'weight_loss',
  ],
  [
    / (?:is|are|eat|eating|only|on|under|just) \d{3,4} (?:calories|kcal|cals|cal) (?:[a-z]+ ){0,3}(?:a day|per day|day|enough|daily|too|ok|for me) /,
    'weight_loss',
  ],
  [
    / (?:my|her|his|personal|custom|me a|a) (?:meal plan|diet plan|eating plan|nutrition plan) | (?:meal plan|diet plan) (?:to|for (?:me|my|cutting|losing)) | put me on /,
    'weight_loss',
  ],
  [/ (?:period|periods|menstr\w*|menses|amenorr\w*|time of the month) (?!of|drink)/, 'low_energy'],
  [
    / (?:red s|reds|relative energy deficiency|low energy availability|underfuel\w*|under fuel\w*|female athlete triad|triad) /,
    'low_energy',
  ],
  [
    / (?:always|constantly|so|really|super|been|all the time|feel|feeling|very|chronic\w*|im|extremely) (?:[a-z]+ ){0,2}(?:tired|exhausted|fatigued?|fatigue|weak|cold|run down|drained) (?!water|brew|milk|storage|out|drink|bars?|food)/,
    'low_energy',
  ],
  [
    / (?:dizzy|dizziness|light ?headed|lightheaded\w*|woozy|vertigo|seeing (?:spots|stars)|shaky|blurry vision|double vision) /,
    'low_energy',
  ],
  [
    / (?:heart|pulse) (?:[a-z]+ ){0,3}(?:rate|racing|weird|flutter\w*|skipp\w*|palpitat\w*|pound\w*|slow|irregular|fast)| palpitations /,
    'diagnosis',
  ],
  [
    / (?:stress fractures?|fracture\w*|broken (?:bone|arm|leg|foot|toe|finger|wrist|hand|rib|nose|collarbone)|broke (?:my|his|her) |bone (?:density|scan|injury|stress)) /,
    'injury',
  ],
  [
    / (?:torn|tore|tear|ruptur\w*|sprain\w*|strain\w*|pulled|dislocat\w*|tendin\w*|tendon\w*|acl|mcl|meniscus|hamstring|rotator|labrum|shin splints|plantar) (?!pork|apart|chicken|the|out|from|\d)/,
    'injury',
  ],
  [/ (?:injur\w*|post op|surgery|surgeries|stitches|cast|crutches) /, 'injury'],
  [
    new RegExp(
      ` ${BODY} (?:[a-z]+ ){0,3}(?:hurts?|hurting|pain|pains|aches?|aching|sore|swollen|swelling|killing|cramp\\w*|injur\\w*|upset|problems?|issues?|bothering|burns|feels) `,
    ),
    'injury',
  ],
  [
    new RegExp(
      ` (?:hurts?|pain|pains|sore|aching|swollen|twisted|rolled|hurt|injured|bruised|jammed|cramp\\w*) (?:in |my |his |her |your |the |on |a )*${BODY} `,
    ),
    'injury',
  ],
  [/ (?:concuss\w*|hit (?:my|his|her|their) head|head injury|bumped (?:my|his|her) head) /, 'injury'],
  [
    / (?:labs?|lab work|bloodwork|blood ?work|blood tests?|blood panel|ferritin|hemoglobin|haemoglobin|hematocrit|a1c|cbc|tsh|test results?|lab results?|mri|x ?rays?|ultrasound|ekg|ecg|biopsy) (?!kitchen|coat)/,
    'labs',
  ],
  [
    / (?:vitamin d|vit d|iron|b12|cholesterol|testosterone|cortisol|thyroid|sodium|potassium|glucose) (?:level|levels|is low|is high|was low|came back|deficien\w*|count|of \d+) | (?:low|high) (?:in )?(?:iron levels|iron|ferritin|vitamin d|vit d|b12|cholesterol|testosterone|thyroid|blood pressure) (?:what|levels?|should|and|so|can|is|bad|help|diet|bars|\?|$)| (?:my|his|her) (?:[a-z]+ )?(?:iron|ferritin|vitamin d|b12|cholesterol|hemoglobin) (?:is|was|are|came|level|levels|low|high|of)/,
    'labs',
  ],
  [/ (?:anemi[ac]|anaemi[ac]|iron deficien\w*|deficien(?:t|cy)) /, 'labs'],
  [
    / (?:diabet\w*|insulin|blood sugars?|glucose monitor|hypoglyc\w*|hyperglyc\w*|prediabet\w*|type [12]|cgm) (?!friendly recipe)/,
    'diagnosis',
  ],
  [/ sugar (?:[a-z]+ ){0,2}(?:dropping|crash\w*|spik\w*|is \d+)/, 'diagnosis'],
  [
    / (?:pregnan\w*|breastfeed\w*|breast feed\w*|nursing a|expecting a baby|trying to conceive|postpartum|miscarr\w*|morning sickness) /,
    'diagnosis',
  ],
  [/ (?:birth control|contracepti\w*|iud|the pill|plan b) /, 'dosing'],
  [
    / (?:ibuprofen|advil|motrin|tylenol|acetaminophen|paracetamol|aspirin|naproxen|aleve|antibiotics?|antidepress\w*|ssri|prozac|zoloft|lexapro|adderall|vyvanse|ritalin|concerta|accutane|isotretinoin|prednis\w*|cortisone|steroids?|painkillers?|warfarin|blood thinners?|statins?|metformin|albuterol|inhaler|allergy (?:pills?|meds?)|antihistamin\w*|benadryl|claritin|zyrtec|medications?|medicines?|meds|prescri\w*|muscle relax\w*|sleeping pills?|opioids?|codeine|amoxicillin|doxycycline|levothyroxine|lithium|pepto|imodium|antacids?|omeprazole) /,
    'dosing',
  ],
  [
    new RegExp(
      ` (?:how much|how many|how often|what amount|what dose|whats the dose|mg of|grams of|when should i|how long should i|what time should i) (?:[a-z]+ ){0,4}${DOSED} (?:[a-z]+ ){0,2}(?:should|do|can|to|must|i|we|per|a|for|daily|every|take|is (?:safe|too|right|good)|does an?) (?!limit|have|contain|legal|banned)`,
    ),
    'dosing',
  ],
  [
    new RegExp(
      ` (?:how much|how many|how often|when) (?:should|do|can|must|to|does) (?:[a-z]+ ){0,3}(?:take|use|load|dose) (?:[a-z]+ ){0,3}${DOSED} `,
    ),
    'dosing',
  ],
  [
    new RegExp(
      ` (?:take|taking) (?:[a-z]+ ){0,3}\\d+ ?(?:mg|g|grams|mcg|iu|pills?|scoops?) (?:of )?${DOSED} `,
    ),
    'dosing',
  ],
  [
    new RegExp(
      ` \\d+ ?(?:mg|g|grams|mcg|iu) (?:of )?${DOSED} (?:[a-z]+ ){0,3}(?:ok|okay|safe|enough|too much|a day|per day|daily|before|too) `,
    ),
    'dosing',
  ],
  [/ (?:dose|doses|dosage|dosages|dosing|loading phase|creatine loading) /, 'dosing'],
  [/ (?:diagnos\w*|symptoms?|self diagnos\w*) /, 'diagnosis'],
  [
    / (?:do i have|does (?:he|she|my \w+) have|could i have|might i have|think i have|think i might have|think im|might be|could i be|am i|how (?:do|can|would) (?:i|you|u) (?:know|tell) if|test for|tested for) (?:[a-z]+ ){0,5}(?:celiac|coeliac|allerg\w*|intoleran\w*|lactose\w*|crohn\w*|ibs|disease|infection|disorder|reds|anemi\w*|deficien\w*|diabet\w*|concuss\w*|covid|flu|mono|gluten\w*) /,
    'diagnosis',
  ],
  [
    / (?:stomach|gut|belly|tummy|gi|digestive|bowel) (?:[a-z]+ ){0,2}(?:pain|pains|ache|aches|cramps?|cramping|problems?|issues?|distress|trouble|upset|hurts?|bug|flu) /,
    'diagnosis',
  ],
  [/ (?:upset|hurts?|bad|sick|sour|nervous) (?:my |to my |his |her )?stomach /, 'diagnosis'],
  [
    / (?:diarr?h?o?ea\w*|diarea|constipat\w*|nause\w*|vomit\w*|throwing up|threw up|puking|puked|bloat\w*|acid reflux|heartburn|the runs|the shits|fever|feverish|flu|covid|norovirus|strep|mono|infection|infected|migraines?|headaches?|ibs|crohn\w*|colitis|gerd|eczema|asthma|thyroid|pcos|endometriosis|epilep\w*|sickle cell) /,
    'diagnosis',
  ],
  [
    / food poison\w* | (?:feel|feeling|felt|got|gets|getting|im|hes|shes|made (?:me|him|her|us|them)|is|are|all|who is) (?:really |so |very |kinda |super )?(?:sick|ill|queasy|unwell|nauseous) (?!of)/,
    'diagnosis',
  ],
  [/ rash(?:es)? (?!decision)/, 'diagnosis'],
  [
    / (?:kidney|liver|gall ?bladder|thyroid|heart condition|heart disease|high cholesterol|(?<!low )cholesterol(?! free)|blood pressure|hypertens\w*|autoimmune|cancer|chemo) (?:[a-z]+ ){0,2}(?:problems?|disease|stones?|issues?|failure|is|condition|what|function|damage|bad|bars|diet|meds|high|low|\?|$)?/,
    'diagnosis',
  ],
  [
    / (?:depress\w*|anxiety|panic attacks?|mental health|therapist|counsel\w+|burnt? ?out emotionally|lonely|adhd|ocd|bipolar|ptsd|crying all) /,
    'diagnosis',
  ],
  [
    / (?:urine|pee|peeing|piss|poop|stool) (?:[a-z]+ ){0,3}(?:is|looks|dark|brown|bloody|red|blood|color|colored) | (?:dark|brown|bloody|red) (?:urine|pee|piss|stool) | blood in (?:my|his|her) /,
    'diagnosis',
  ],
  [
    / (?:doctor|physician|dr|nurse) (?:[a-z]+ ){0,3}(?:gave|said|says|told|prescribed|put|wants|thinks|diagnosed|found) /,
    'dosing',
  ],
  [/ (?:rhabdo\w*|dehydrated|iv fluids?|iv drip|muscle cramps?|cramping|cramps) /, 'diagnosis'],
  [/ (?:insomnia|cant sleep|trouble sleeping|not sleeping) /, 'diagnosis'],
  [
    / (?:sports hernia|hernia|wound|stitch|healing|heal) (?:faster|from|my|what|after|up|quicker|$)/,
    'injury',
  ],
];

/** Everyday sentences of a kitchen that a sign would fit. */
const EVERYDAY =
  / (?:(?:lost|lose|losing) weight (?:[a-z]+ ){0,3}(?:apples?|oats|fruit|dough|mix|bars?|peeling|baking)|weight of (?:each|every|a|the|one|\d+)|cut weight of (?:each|every|the)|piece weight|drop \d+ lbs? (?:of )?(?:oats|flour)|cooking period|growth period) /;
/** Questions about a food for people with a condition are allergen questions. */
const FOR_FOOD =
  / (?:is|are|does) (?:the |this |these |our )?[a-z ]{0,30}(?:celiac|coeliac|diabetic) (?:safe|friendly|ok) /;

/** The kind of question for clinical staff, if it is one. Wins over all but an emergency. */
export function medicalTopic({ said }: Lexed): MedicalTopic | undefined {
  if (!TRIGGER.test(said) || EVERYDAY.test(said) || FOR_FOOD.test(said)) return undefined;
  for (const [pattern, topic] of SIGNS) if (pattern.test(said)) return topic;
  return undefined;
}

export const MEDICAL_SOURCES: readonly string[] = SIGNS.map(([pattern]) => pattern.source);
