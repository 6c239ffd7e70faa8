import { both, near } from '../near.ts';
import { WHO } from '../words.ts';

const MIND_GOING =
  'out of it|not making sense|isnt making sense|makes no sense|confus\\w*|disoriented|incoherent|delirious|slurr\\w*|babbling|gibberish|drowsy|hard to wake|keeps falling asleep|stay(?:ing)? awake|falling asleep|sleepy|hallucinat\\w*|paranoid|acting (?:weird|strange|drunk|funny|off|crazy|wild)|doesnt know (?:where|who|what day)|cant remember|memory loss|glassy|glazed|unsteady|stumbling|staggering|wobbly';
const THROWS_UP = 'vomit\\w*|throwing up|threw up|throws up|puk(?:e|ed|es|ing)|thrown up';

/** What comes on at once and does not wait: head, eyes, bleeding in pregnancy, pain past bearing, a mind going. */
export const SUDDEN_ILLNESS: readonly RegExp[] = [
  / (?:worst|thunderclap|sudden|suddenly|severe|explosive) (?:[a-z]+ ){0,2}headache | headache (?:[a-z]+ ){0,5}(?:of (?:my|his|her) life|stiff neck|blurry|blurred|double vision|confus\w*|slurr\w*|numb)/,
  / (?:lost|losing|loses|no) (?:my |his |her |their |all |the )*(?:vision|sight|eyesight) | went blind | suddenly (?:cant|cannot|couldnt|blind|deaf|numb|paralyzed|unable)| (?:cant|cannot) see $| (?:cant|cannot) see (?:anything|out of) (?:my|his|her|left|right|one|and|$)/,
  near('pregnan\\w*|miscarr\\w*', 'bleed\\w*|blood|severe|fainted|fell|seizure|contractions?|water broke', 6),
  / hallucinating | water broke | (?:in agony|screaming in) /,
  near(
    'legs?|arms?|ankle|wrist|knee|elbow|finger|shoulder|foot',
    'bent (?:wrong|weird|backwards?|the wrong|sideways)|deformed|wrong (?:way|angle|direction)|dangling|hanging off|popped out of',
    4,
  ),
  / send help | (?:get|find|call|need|grab) (?:the |an? |our |my )?(?:trainer|athletic trainer|doctor|medic|nurse|paramedics?|security|police|cops) (?:[a-z]+ )?(?:now|quick|quickly|fast|asap|immediately|right now|here|hurry) | nearest (?:hospital|er|emergency|urgent care|aed|defib\w*) /,
  / (?:excruciating|unbearable|agonizing|10 out of 10|ten out of ten) pain | (?:doubled over|screaming|writhing) (?:[a-z]+ ){0,3}pain | (?:severe|extreme|intense|horrible|terrible) (?:[a-z]+ ){0,2}(?:abdominal|stomach|chest|back|testic\w*) pain /,
  both(THROWS_UP, MIND_GOING),
  both(
    '(?:hit|hits|hitting|banged|bumped|smacked|knocked|struck|slammed|landed on) (?:[a-z]+ ){0,3}head|head (?:injury|hit|first)|concuss\\w*|fell|knocked out',
    `${MIND_GOING}|${THROWS_UP}|bleeding|seiz\\w*|pupils?`,
  ),
  both(
    'fever|infection|infected|10[3-9] degrees|sepsis|septic',
    `stiff neck|purple spots|seiz\\w*|${MIND_GOING}`,
  ),
  both(
    'took|taken|drank|drunk|ate|swallowed|pills?|pre ?workout|energy drinks?|caffeine|alcohol|vodka|edibles?|gumm(?:y|ies)|drugs?|high',
    `heart (?:is |was |keeps )?(?:pounding|racing|going crazy|beating)|(?:he|she|hes|shes) (?:is )?shaking|shaking (?:and|bad)|cant stop shaking|chest|${MIND_GOING}`,
  ),
  both(
    'heart (?:is |was |keeps |has been )?(?:pounding|racing|beating|fluttering|skipping)',
    'faint\\w*|dizzy|lightheaded|light headed|pass(?:ing)? out|breath\\w*|sweating|chest|shaking',
  ),
  / (?:sepsis|septic|meningitis|appendix (?:burst|ruptured)|anoxic|aneurysm|blood clot|pulmonary embolism|rhabdo (?:and|collapsed)) /,
  / (?:am i|is (?:he|she)|are they|hes|shes|theyre|might be|may be|think (?:im|hes|shes|he is|she is)|going to|gonna) (?:dying|dead|die) (?!for|of (?:hunger|laughter|boredom)|to|laughing|lol|at)/,
  / (?:something|somethings)(?: is)? (?:really |very |seriously |badly |terribly |definitely )*wrong with (?:him|her|them|me|my (?!recipe|batch|oven|phone|order)[a-z]+|the (?:player|athlete|kid|intern|girl|guy|freshman)|[a-z]{2,3}-\d\d) /,
  / (?:he|she|hes|shes|they|theyre|kid|athlete|player|teammate|intern) (?:is |are |looks? |doesnt look |does not look |seems )*(?:really |so )?(?:not ok|not okay|not alright|not good|ok or okay) (?!with|for|to|at|about|on)/,
  / come (?:here |over here |now )?(?:quick|quickly|fast|asap|immediately|right now) (?!the (?:bars|bites|muffins|food|delivery|truck|oven))| (?:somebody|someone|anybody|anyone) (?:please |pls )?help (?!with|me (?:with|make|find|scale|wrap|cut)|wrap|make|cut|carry|load|out|the interns?)/,
  new RegExp(
    ` ${WHO} (?:is |are |was |still |started |starting |keeps |to )*(?:swelling|swelled|swole|puffing up|ballooning) `,
  ),
  / (?:auxilio|socorro|ayudenme|inconsciente|no responde|infarto|dolor (?:de|en el) pecho|hinchad[oa]s?|sangrando|atragant\w*|se desmayo|no reacciona|veneno|emergencia) /,
];
