import type { Lexed } from '../lexed.ts';

type Signs = readonly (readonly [pattern: RegExp, topic: string])[];

/** Any of these words makes the signs below worth reading; one set look-up a word keeps other messages fast. */
const TRIGGERS: ReadonlySet<string> = new Set(
  `throat throats breathe breath breathing breathes breaths lips lip tongue tounge toung swell swells swelling swollen swelled hives hive puffy anaphylaxis anaphylactic
  anaphylactoid epipen epi injector autoinjector injectors epinephrine adrenaline choke choked choking chokes blue purple passed pass passing faint fainted fainting collapsed
  collapse collapsing collapses unconscious responding unresponsive responsive response pulse seizure seizures seizing seizes convulsion convulsions convulsing fit
  stroke heatstroke sweating sweat confused die dying dead kill killing kills killed suicide suicidal hurt hurting harm harming cutting cut alive live living
  overdose overdosed overdosing od poison poisoned poisoning bottle pills drank drink swallowed swallow ate eaten chest heart 911 999 112 emergency emergencies sos ambulance
  paramedic paramedics bleeding bleed blood wheezing wheeze wheezy wheezes tight tightness closing closed close allergic reaction reacting reactions airway gag gagging gasping gasp
  respirar ahogando emergencia ayuda alergia alergica alergico stung sting bee wake waking woke awake stuck cough coughing foaming shaking shock electrocuted
  drowning drowned unwell paralyzed numb drooling slurring slurred head neck end ending life goodbye worthless itchy itching burned burn burns fire gas
  vomiting vomit throwing puking puke rash flushed floor falling fell hands knife spurting stopped epis jab penned auto cpr defibrillator aed cardiac reacts bleach sanitizer degreaser cleaner
  weird funny fuzzy puffing choaking choak benadryl antihistamine inhaler asthma talk speak hospital er anymore allergy allergies air ground down moving sense overheated overheating reason point disappear vanish took accidentally accident mistake spots wrong everything exist fingers finger burnt eyes eye limp answering opening temp delirious disoriented incoherent rolled roll`.split(
    /\s+/,
  ),
);

const WHO =
  '(?:he|she|they|him|her|someone|somebody|athlete|player|kid|girl|guy|boy|teammate|intern|person|patient|friend|i|we|who|student|coach|swimmer|runner|wrestler|lineman|dude|people|us|freshman)';
const ALLERGEN =
  '(?:nuts?|peanuts?|peanut butter|pb|almonds?|cashews?|walnuts?|pecans?|pistachios?|hazelnuts?|tree nuts?|dairy|milk|eggs?|sesame|tahini|soy|wheat|gluten|fish|shellfish|shrimp|it|one|the bar|bar|cookie|something|allergen|wrong bar|wrong one)';

/** What somebody in danger writes, or somebody beside them. Errs toward an emergency. */
const SIGNS: Signs = [
  [
    / (?:blood|bleeding) (?:[a-z]+ ){0,2}(?:wont|doesnt|not|cant|isnt) (?:[a-z]+ )?(?:stop\w*|clot\w*) /,
    'bleeding',
  ],
  [
    / eyes? (?:[a-z]+ ){0,2}(?:rolled|rolling|roll) | (?:is|went|gone|going|hes|shes|completely|all|body) limp /,
    'seizure',
  ],
  [
    / (?:temp|temperature|fever) (?:[a-z]+ ){0,3}10[4-9] .*(?:confus\w*|vomit\w*|collaps\w*|hot|not|seiz\w*|athlete|he|she) /,
    'heat_illness',
  ],
  [
    / (?:he|she|hes|shes|athlete|player|kid|and|runner|girl|guy) (?:is |now |all |so |really |very |seems |acting |got )*(?:confused|delirious|disoriented|incoherent) (?!about|by|on|which|with|how|what|why|where|when)/,
    'heat_illness',
  ],
  [
    / (?:he|she|hes|shes|they|athlete|player|kid) .*(?:not|isnt|wont|stopped) (?:answering|talking|reacting|opening) /,
    'collapse',
  ],
  [
    / (?:throats?|airways?) (?:[a-z]+ ){0,5}(?:clos\w*|swell\w*|swollen|tight\w*|itch\w*|shut\w*|constrict\w*|block\w*|scratchy|puffy|weird|funny|tingl\w*|lump|numb|locking|locked)/,
    'allergic_reaction',
  ],
  [
    / (?:clos\w*|swell\w*|swollen|tight\w*|itch\w*|scratchy|tingl\w*) (?:[a-z]+ ){0,4}(?:throat|tongue|lips?|airway|mouth) /,
    'allergic_reaction',
  ],
  [
    / (?:lips?|tongue|tounge|face|eyes?|mouth|cheeks?|neck|eyelids?|hands?|whole body|body|uvula) (?:[a-z]+ ){0,6}(?:swell\w*|swollen|puff\w*|tingl\w*|blue|purple|numb|balloon\w*|itchy)/,
    'allergic_reaction',
  ],
  [
    / (?:swell\w*|swollen|puffy|blue|tingly) (?:[a-z]+ ){0,3}(?:lips?|tongue|tounge|face|mouth|eyes?|eyelids?) /,
    'allergic_reaction',
  ],
  [
    / (?:tongue|tounge|lips?|mouth|throat|face) (?:[a-z]+ ){0,3}(?:weird|funny|fuzzy|fat|thick|burning|puffing|huge|heavy) /,
    'allergic_reaction',
  ],
  [
    new RegExp(
      ` (?:ate|eaten|eating|swallowed|had|given) (?:[a-z]+ ){0,3}${ALLERGEN} (?:[a-z]+ ){0,3}(?:accident|mistake|accidentally|accidently) `,
    ),
    'allergic_reaction',
  ],
  [/ hot .*(?:vomit\w*|throwing up|confus\w*|(?:doesnt|dont) know where) /, 'heat_illness'],
  [/ (?:choaking|choakin|choak|chokeing|choaked) /, 'choking'],
  [/ (?:hives?|welts) /, 'allergic_reaction'],
  [/ (?:anaphyla\w*|anafil\w*|anaphil\w*|anafyl\w*) /, 'allergic_reaction'],
  [
    / (?:epi ?pens?|epi|epis|epipens|auto ?injectors?|injectors?|epinephrine|adrenaline) /,
    'allergic_reaction',
  ],
  [/ (?:allergic|allergy|bad) reactions? /, 'allergic_reaction'],
  [/ (?:having|has|had|getting|think|is) (?:an? )?(?:[a-z]+ )?reaction(?:s)? /, 'allergic_reaction'],
  [/ reacting (?:[a-z]+ )*(?:to|bad|badly) /, 'allergic_reaction'],
  [
    / (?:ate|eaten|had|swallowed|eating|took a bite|bit into|tasted|drank) (?:[a-z]+ ){0,6}(?:allergic|allergy|allergen) /,
    'allergic_reaction',
  ],
  [
    new RegExp(
      ` (?:allergic|allergy|allergies|anaphylactic)(?: [a-z]+){0,8} (?:just )?(?:ate|eaten|swallowed|drank|bit|tasted|got into|had (?:an? |some |the )?${ALLERGEN}) `,
    ),
    'allergic_reaction',
  ],
  [
    new RegExp(
      ` (?:ate|eaten|swallowed|bit into) (?:[a-z]+ ){0,3}${ALLERGEN} (?:[a-z]+ ){0,6}(?:allergic|allergy|reaction|feels?|itch\\w*|swell\\w*|tight|help|epi\\w*) `,
    ),
    'allergic_reaction',
  ],
  [
    / (?:accident\w*|mistake\w*|wrong|oops|mixed up) .*(?:allergic|allergy|allergies|epi\w*) (?!label|card|list|sheet|board|menu|sign)/,
    'allergic_reaction',
  ],
  [
    / (?:gave|fed|served|handed|ate|eaten|had) .*(?:allergic|allergy|allergies) .*(?:accident\w*|mistake|oops|what now|help) /,
    'allergic_reaction',
  ],
  [
    / allerg\w* .*(?:spots|blotch\w*|cough\w*|itch\w*|vomit\w*|dizzy|breath\w*|swell\w*|swollen|throat|pale|flushed|sweating|shaking|turning red|all red) /,
    'allergic_reaction',
  ],
  [
    / (?:spots|blotch\w*|cough\w*|itch\w*|vomit\w*|swell\w*|red|puffy) .*(?:after|from) (?:eating|he ate|she ate|i ate|the|a) .*allerg\w* /,
    'allergic_reaction',
  ],
  [
    / (?:tongue|tounge|toung|lips?|face|throat|neck|eyes?) (?:[a-z]+ ){0,3}(?:big|bigger|huge|fat|thick|growing|blown up|blowing up) /,
    'allergic_reaction',
  ],
  [/ (?:sting|stung) .*(?:swell\w*|swollen|allergic|breath\w*|hives|dizzy)/, 'allergic_reaction'],
  [
    / (?:vomit\w*|throwing up|puking|rash|flushed|itch\w*) (?:[a-z]+ ){0,4}(?:and|with) (?:[a-z]+ )?(?:hives|swell\w*|wheez\w*|trouble breathing|breath\w*|dizz\w*|itch\w*) /,
    'allergic_reaction',
  ],
  [/ itch\w* (?:all over|everywhere|mouth|after (?:eating|the|a|he|she|i)) /, 'allergic_reaction'],
  [
    / (?:cant|cannot|can not|couldnt|couldn|not|isnt|hardly|barely|stopped|unable to|no puede|cnt|difficulty|difficult|hard time|struggl\w+|troubles?|problems?|hard|short(?:ness)? of|out of|labored|fast|heavy|gasping for|trying to|wont|arent|doesnt|quit|having trouble|no) (?:[a-z]+ ){0,2}(?:breath\w*|brethe|breth|breeth|breathe|respirar) /,
    'not_breathing',
  ],
  [
    / (?:breathing|breath) (?:[a-z]+ ){0,3}(?:stopped|hard|difficult|trouble|weird|funny|shallow|problem|problems|heavy|fast|labored|noisy|bad) /,
    'not_breathing',
  ],
  [
    / (?:cant|cannot|cnt|couldnt|hardly|barely|trying to|unable to|struggl\w+ to|not) (?:get|getting|catch|take|find) (?:[a-z]+ ){0,2}(?:air|breath|oxygen) /,
    'not_breathing',
  ],
  [/ (?:gasping|wheez\w*) /, 'not_breathing'],
  [/ asthma attack | (?:where|need|get|no) (?:[a-z]+ ){0,3}inhaler /, 'not_breathing'],
  [/ (?:choking|chocking|chokin|choaking|choked) /, 'choking'],
  [
    / (?:is|are|hes|shes|hes|might be|may be|started) (?:choke|chokes) | (?:he|she|kid|player|athlete|someone) (?:chokes|choke) /,
    'choking',
  ],
  [/ (?:stuck|lodged|blocking|caught) (?:[a-z]+ ){0,3}(?:throat|airway|windpipe) /, 'choking'],
  [/ (?:cant|cannot|not able to|unable to) (?:talk|speak|cough|swallow)/, 'choking'],
  [/ gagging (?:[a-z]+ )*(?:cant|cannot|stop) | heimlich /, 'choking'],
  [
    / (?:turn\w*|going|gone|went|looks?|lips|face|fingers|skin|hes|shes|(?:he|she|kid|player|athlete|guy|girl) is) (?:[a-z]+ ){0,2}(?:blue|purple|grey|gray) /,
    'not_breathing',
  ],
  [/ pass(?:ed|es|ing)? out /, 'collapse'],
  [/ blacked out | blacking out | black out on /, 'collapse'],
  [/ faint(?:ed|ing|s)? /, 'collapse'],
  [/ collaps\w+ | colaps\w+ | collasp\w+ /, 'collapse'],
  [/ (?:unconsc\w*|unresponsive|uncon\w*|knocked out|out cold|passed-out) /, 'collapse'],
  [
    / (?:not|isnt|wont|doesnt|stopped|no longer|didnt|no) (?:[a-z]+ ){0,1}(?:respond\w*|responsive|response|wake|waking|woke|awake|conscious|moving) /,
    'collapse',
  ],
  [/ (?:cant|cannot|cant get|couldnt) (?:[a-z]+ ){0,2}(?:wake|woke|wake up|get up|stand up) /, 'collapse'],
  [
    / (?:fell|went|dropped|is) (?:down|over|to the (?:floor|ground)|on the (?:floor|ground)|limp) (?:[a-z]+ ){0,5}(?:not|wont|shaking|unconscious|hurt|moving|help)/,
    'collapse',
  ],
  [
    / (?:someone|somebody|athlete|player|he|she|kid|girl|guy|man|person|teammate|intern|coach|hes|shes|they|runner|swimmer) (?:is |are |just |has |have |suddenly )*(?:down|went down|gone down|dropped|fell over|keeled over|goes down|hit the (?:floor|ground)) (?!to|for|with|on (?:the )?(?:list|road)|here for|there for|the|at)/,
    'collapse',
  ],
  [/ shaking (?:[a-z]+ ){0,3}(?:ground|floor|uncontroll\w*|violently|all over) /, 'seizure'],
  [
    / (?:not|stopped|isnt|arent|no longer) making (?:any )?sense .*(?:heat|hot|sun|practice|overheat\w*)?/,
    'heat_illness',
  ],
  [
    / overheat\w* (?!oven|motor|mixer|fridge)(?:[a-z]+ ){0,6}(?:sense|confus\w*|vomit\w*|dizzy|down|athlete|player|stopped|help) /,
    'heat_illness',
  ],
  [/ (?:no|weak|cant find|cant feel|without|lost) (?:a )?(?:pulse|heartbeat) /, 'collapse'],
  [/ (?:cpr|defibrillator|cardiac arrest|heart attack|heart stopped) /, 'heart'],
  [/ (?:where|need|get|grab) (?:[a-z]+ ){0,3}aed | aed (?:now|please|location|where) /, 'heart'],
  [
    / chest (?:[a-z]+ ){0,3}(?:pains?|hurts?|hurting|tight\w*|pressure|crushing)| (?:pain|pains|tightness|pressure|hurts|crushing) (?:[a-z]+ ){0,3}chest /,
    'heart',
  ],
  [
    / seiz(?:ure|ures|ing|es) | siezure | siezing | (?:convuls\w+) | (?:having|had|has|throwing) (?:a |an )?(?:epileptic )?fits? /,
    'seizure',
  ],
  [
    / (?:foaming|froth\w*) | (?:body|shaking) (?:[a-z]+ ){0,3}(?:uncontroll\w*|floor|violently) | eyes rolled/,
    'seizure',
  ],
  [
    / (?:face|mouth) droop\w* | slurr\w* (?:speech|words|his|her)|(?:speech|words) (?:is |are )?slurr\w* | (?:having|had|has) a stroke /,
    'stroke',
  ],
  [
    / (?:heat ?stroke|heatstroke|sun ?stroke|heat exhaustion|heat illness|heat sick\w*|overheat(?:ed|ing) (?:player|athlete|on the field|bad)) /,
    'heat_illness',
  ],
  [/ (?:stopped|not|quit|no longer) sweating /, 'heat_illness'],
  [
    / (?:confused|delirious|disoriented|vomiting|staggering|stumbling|dizzy) (?:[a-z0-9]+ ){0,6}(?:heat|hot|sun|degrees|field) | (?:heat|hot|sun|degrees|overheat\w*) (?:[a-z0-9]+ ){0,6}(?:confused|delirious|disoriented|staggering|stumbling|collapsing) /,
    'heat_illness',
  ],
  [
    / (?:want|wants|wanna|wanted|going|gonna|ready|rather|wish|try|trying|plan|planning|thinking|thoughts?|about|feel like|think about) (?:[a-z]+ ){0,3}(?:die|dying|death|kill|killing|hurt|hurting|harm|harming|end|ending|suicide|unalive|dead|disappear forever) (?:me |my |myself|herself|himself|themselves|themself|yourself|it |all |life|$|anymore|tonight|today|now|right|please|and |because |so |bad)/,
    'self_harm',
  ],
  [/ (?:want|wants|wanna|wanted) (?:to )?(?:die|be dead) /, 'self_harm'],
  [
    / (?:dont|do not|doesnt|didnt|no longer|not) (?:want|wanna|feel like|care) (?:[a-z]+ ){0,2}(?:live|living|alive|exist|existing|be here|wake up|go on) /,
    'self_harm',
  ],
  [
    / (?:kill|killing|hurt|hurting|harm|harming|cutting|cut|burning|starv\w+) (?:my ?self|him ?self|her ?self|them ?sel\w+|your ?self) (?!by accident|in the|with (?:a|the) (?:knife|can|slicer)|on )/,
    'self_harm',
  ],
  [/ (?:suicid\w*|self harm\w*|selfharm\w*|kms|unalive) /, 'self_harm'],
  [
    / end (?:it all|my life|his life|her life|it tonight|things) | (?:ending|take|taking|took) (?:it all|my (?:own )?life|his (?:own )?life|her (?:own )?life) /,
    'self_harm',
  ],
  [
    / (?:no|any|lost|without) (?:reason|point|will|purpose) (?:to|in|of) (?:liv\w+|be alive|go on|going on|being alive) | better off (?:dead|without me) | cant go on | cant do this anymore (?:i want|life)|(?:life|living) (?:is|isnt|not) (?:not )?worth| life isnt worth/,
    'self_harm',
  ],
  [
    / (?:wish (?:i|he|she) (?:was|were) (?:dead|never born)|want it all to (?:end|stop)|say goodbye forever|everyone would be better without me)/,
    'self_harm',
  ],
  [
    / (?:see|have|got|no|any|find) (?:a |any |no |much |the )*(?:reason|point|purpose) .*(?:going|go on|living|live|life|alive|exist\w*|continue|wake up) /,
    'self_harm',
  ],
  [
    / want (?:it|it all|everything|all of it|this|the pain|all this) to (?:all )?(?:stop|end|be over) | (?:want|wanna|going|need|wish) (?:to |i could )(?:just )?(?:disappear|vanish|not exist|never wake up|sleep forever|go to sleep forever) /,
    'self_harm',
  ],
  [
    / (?:took|swallowed|ate|downed|popped|taken) (?:[a-z]+ ){0,3}(?:\d\d+|twenty|thirty|forty|fifty|dozen|whole) (?:[a-z]+ ){0,2}(?:pills?|tablets?|capsules?|advil|tylenol|ibuprofen|aspirin|benadryl|melatonin|xanax|adderall|caffeine|meds) /,
    'poisoning',
  ],
  [/ (?:overdos\w*|od|oded|ods) /, 'poisoning'],
  [
    / (?:took|swallowed|ate|taken|downed|popped) (?:[a-z0-9]+ ){0,4}(?:bottle|handful|pack|box|bunch|lot|all|too many) (?:[a-z]+ ){0,3}(?:pills?|tablets?|meds?|medicine|medication|caffeine|advil|tylenol|melatonin|gummies) /,
    'poisoning',
  ],
  [/ too many (?:[a-z]+ ){0,2}(?:pills?|tablets?|gummies) /, 'poisoning'],
  [/ (?:poison|poisoned|poison control) (?!ivy)/, 'poisoning'],
  [
    / (?:drank|swallowed|drunk|ingested|ate|drink|sprayed) (?:[a-z]+ ){0,4}(?:bleach|clean\w+|sanit\w+|degreaser|detergent|chemical\w*|lye|ammonia|soap|hand sanitizer|fluid|antifreeze|batteries|battery|glass|metal) /,
    'poisoning',
  ],
  [
    / (?:bleach|chemical\w*|sanit\w+|cleaner|degreaser|oil) (?:[a-z]+ ){0,3}(?:in|into|got in) (?:[a-z]+ )?eyes? /,
    'poisoning',
  ],
  [
    / (?:gas leak|smell(?:s|ing)? gas|carbon monoxide|(?:kitchen|oven|grease|pan|fryer|stove|building) (?:is |is on |on )?fire|on fire|fire in)/,
    'fire_or_gas',
  ],
  [
    / bleed\w* (?:[a-z]+ ){0,4}(?:bad\w*|lot|heavily|out|everywhere|wont stop|not stopping|stop|a ton|nonstop|profusely|hard|deep)| (?:lots of|so much|losing|coughing up|vomiting|throwing up|puking) blood | blood everywhere | (?:wont|doesnt|cant) stop (?:the )?bleed\w*/,
    'bleeding',
  ],
  [
    / (?:cut|sliced|chopped|severed) (?:[a-z]+ ){0,4}(?:off|bone|artery|deep|wrist|badly|bleed\w*) (?!cut into)/,
    'bleeding',
  ],
  [/ (?:electric shock|electrocut\w*|shocked by|got shocked|drown\w*) /, 'injury'],
  [
    / (?:severe|bad|third degree|burned|burnt) (?:[a-z]+ ){0,3}(?:burns?|face|arm|hand|leg|hands|arms) (?:[a-z]+ ){0,4}(?:bad|badly|oil|water|steam|skin|blister\w*|hospital) /,
    'injury',
  ],
  [
    / (?:neck|spine|spinal|head) injur\w* | (?:cant|cannot) (?:move|feel) (?:[a-z]+ ){0,2}(?:legs?|arms?|feet|hands?|body|face|side) /,
    'injury',
  ],
  [
    / (?:call|dial|calling|called|need|get) (?:[a-z]+ ){0,3}(?:911|999|112|ambulance|paramedics?|ems) | ambulance |^ (?:911|999|112) (?!bars?|bites?)/,
    'call_for_help',
  ],
  [
    /^ (?:[a-z]+ ){0,4}(?:emergency|emergencia|sos) (?:[a-z]+ ){0,4}$| (?:an|its an|is an|this is an|medical|real|have an|its|life threatening) emergency | emergency (?:help|now|please|in|at|room) | sos /,
    'call_for_help',
  ],
  [
    / (?:no puede|no puedo) respirar | se esta ahogando | me ahogo | ayuda emergencia | reaccion alergica /,
    'not_breathing',
  ],
  [
    new RegExp(
      ` ${WHO} (?:[a-z]+ ){0,3}(?:is|are|was|might be|looks like (?:he|she) is) (?:dying|dead|lifeless) `,
    ),
    'collapse',
  ],
  [
    / (?:im|i am|hes|shes) (?:actually |literally )?dying (?!for|of (?:hunger|boredom|laughter|thirst)|to|here|inside|laughing|lol)/,
    'collapse',
  ],
  [
    / (?:low|high|crashing) (?:blood )?sugar (?:[a-z]+ ){0,5}(?:passed|shaking|confused|unconscious|out|sweating|wont|not) /,
    'collapse',
  ],
  [
    / (?:insulin shock|diabetic (?:coma|shock|emergency)|hypo(?:glycemic)? (?:and|athlete|not)|hypothermia|anaphylaxis) /,
    'collapse',
  ],
];

/** Words that keep their everyday meaning though a sign fits. */
const EVERYDAY =
  / (?:mixer|machine|blender|processor|disposal|oven) (?:[a-z]+ ){0,3}(?:choking|choked|chokes|gagging) | on fire (?:this season|lately|rn|right now lol|today lol) | with an? (?:epi ?pen|auto ?injector) .*(?:which|what) (?:[a-z]+ ){0,3}(?:can|could|may) | (?:choke|choked|choking) (?:down|it down) | (?:choking|choke) (?:up|artist) (?:in|at|on) (?:the )?(?:game|free throws) /;

/** The kind of emergency that is told of, if any. Wins over every other reading. */
export function emergencyTopic({ said }: Lexed): string | undefined {
  if (!mentions(said)) return undefined;
  if (EVERYDAY.test(said)) return undefined;
  for (const [pattern, topic] of SIGNS) if (pattern.test(said)) return topic;
  return undefined;
}

function mentions(said: string): boolean {
  for (const word of said.split(' ')) if (TRIGGERS.has(word)) return true;
  return /chock|choak|siez|anaf|anaph|breat|throa|chok|swel|seiz|suicid|collap|overdo|electroc|unconsc|convuls|faint|drown|heimlich|hypo|bleed|poison|kms|unalive|welts/.test(
    said,
  );
}

export const EMERGENCY_SOURCES: readonly string[] = [
  ...SIGNS.map(([pattern]) => pattern.source),
  ...TRIGGERS,
];
