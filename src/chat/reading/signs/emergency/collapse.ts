import { both, near } from '../near.ts';
import { WHO } from '../words.ts';

export const COLLAPSE: readonly RegExp[] = [
  / (?:he|she|hes|shes|they|athlete|player|kid) .*(?:not|isnt|wont|stopped) (?:answering|talking|reacting|opening) /,
  near(
    'slid|slumped|sank|crumpled|toppled|keeled|buckled|fell|dropped (?:in|on|to|at|by|down|hard|like|near)|went down|crashed',
    '(?:isnt|is not|arent|wont|doesnt|not|stopped|cant) (?:answer\\w*|respond\\w*|react\\w*|talk\\w*|speak\\w*|move|moving)',
    8,
  ),
  both(
    'floor|ground|lying|laying|slumped|bench|bed|hallway|bathroom|shower|couch|turf|mat',
    '(?:wont|doesnt|not|isnt|didnt|cant|stopped) (?:even )?(?:answer\\w*|respond\\w*|react\\w*|speak\\w*|talk\\w*|move|moving|get up)',
  ),
  / (?:no one|nobody|cant|couldnt|cannot|trying to|unable to|wont|didnt) (?:[a-z]+ ){0,3}wake (?:him|her|them|my [a-z]+|the [a-z]+) /,
  / (?:swimmer|diver|kid|he|she|hes|shes|someone|player|athlete|teammate) (?:[a-z]+ ){0,4}(?:sank|sinking|went under|underwater|under water|at the bottom|didnt come up|hasnt come up|face down) (?!in the (?:oven|rankings))/,
  / pass(?:ed|es|ing)? out | (?:about to|going to|gonna|almost|might|nearly|gonna just) (?:pass|black|faint) (?:out )?/,
  / (?:wont|cant|doesnt|isnt|not|never) (?:open|opening|opened) (?:his|her|their) eyes | eyes (?:wont open|are closed and|rolled) | (?:no|a|any|get) response from (?:him|her|them|the (?:player|athlete|kid|girl|guy|intern|runner|swimmer)|[a-z]{2,3}-\d\d) /,
  new RegExp(
    ` ${WHO} (?:[a-z]+ ){0,2}(?:hasnt|havent|has not|not) (?:even )?(?:moved|woken|woke|answered|gotten up|got up|come to|responded|stirred) `,
  ),
  new RegExp(
    ` (?:found|${WHO}) (?:is |was |lying |laying |lies |down |flat |just |still |the |an? |intern |player |out |fit |having |convulsing |unconscious )*on the (?:floor|ground) (?!clean|mop|stretch|scrub|sweep|warming)`,
  ),
  / (?:seeing|see|saw|everything (?:is|went|goes|going)) (?:all )?black (?!beans?|bars?|mold|spots on)/,
  / blacked out | blacking out | black out on /,
  / faint(?:ed|ing|s)? /,
  / collaps(?:e|ed|es|ing) /,
  / (?:he|she|hes|shes|he is|she is|theyre|athlete|player|kid|intern|going|goes|went|go) (?:is )?(?:in|into) shock (?!absorb|at|that|mode)| (?:pulse|heartbeat) (?:is |feels |seems |getting |really |so |very |super |too )*(?:weak|faint|slow|thready|gone|irregular) | (?:he|she|hes|shes|skin|hands|player|athlete|kid|wp-\d\d) (?:[a-z]+ ){0,5}clammy /,
  / (?:unconsc\w*|unresponsive|uncon\w*|knocked out|out cold|passed-out) /,
  / (?:not|isnt|wont|doesnt|stopped|no longer|didnt|no) (?:[a-z]+ ){0,1}(?:respond\w*|responsive|response|wake|waking|woke|awake|conscious|moving) /,
  / (?:cant|cannot|cant get|couldnt) (?:[a-z]+ ){0,2}(?:wake|woke|wake up|get up|stand up) /,
  / (?:fell|went|dropped|is) (?:down|over|to the (?:floor|ground)|on the (?:floor|ground)|limp) (?:[a-z]+ ){0,5}(?:not|wont|shaking|unconscious|hurt|moving|help)/,
  / (?:someone|somebody|athlete|player|he|she|kid|girl|guy|man|person|teammate|intern|coach|hes|shes|they|runner|swimmer) (?:is |are |just |has |have |suddenly )*(?:down|went down|gone down|dropped|fell over|keeled over|goes down|hit the (?:floor|ground)) (?!to|for|with|on (?:the )?(?:list|road)|here for|there for|the|at)/,
  / (?:no|weak|cant find|cant feel|without|lost) (?:a )?(?:pulse|heartbeat) /,
  new RegExp(
    ` ${WHO} (?:[a-z]+ ){0,3}(?:is|are|was|might be|looks like (?:he|she) is) (?:dying|dead|lifeless) `,
  ),
  / (?:im|i am|hes|shes) (?:actually |literally )?dying (?!for|of (?:hunger|boredom|laughter|thirst)|to|here|inside|laughing|lol)/,
  / (?:low|high|crashing) (?:blood )?sugar (?:[a-z]+ ){0,5}(?:passed|shaking|confused|unconscious|out|sweating|wont|not) /,
  / (?:insulin shock|diabetic (?:coma|shock|emergency)|hypo(?:glycemic)? (?:and|athlete|not)|hypothermia|anaphylaxis) /,
  / (?:lost|loses|losing|lose) consciousness | (?:in and )?out of consciousness | ko(?:d|ed) | slumped (?:over|down|in|on) | face down (?:on|in) | keeled over /,
  new RegExp(
    ` ${WHO} (?:[a-z]+ ){0,3}(?:lying|laying|face down|sprawled) (?:[a-z]+ ){0,2}(?:floor|ground|field|court|deck|turf|track) `,
  ),
  new RegExp(
    ` found (?:${WHO}|my \\w+|the \\w+) (?:[a-z]+ ){0,3}(?:floor|ground|passed|unconscious|not|cold|unresponsive|blue) `,
  ),
  /(?<! (?:trays?|pans?|slabs?|sheets?|racks?|bowls?|bags?|box|boxes|batch|food|bars?|bites?|muffins?|rolls?|parfaits?|cups?|squares|it)(?: (?:fell|dropped|down|went|is|was))?) (?:hit|dropped to|fell to|fell on|crumpled to|down on|on) the (?:floor|ground|deck|turf|court) (?:[a-z]+ ){0,4}(?:not|isnt|wont|unconscious|hurt|help|hard|shaking|cant|and) /,
  near(
    'wont|cant|not|isnt|doesnt|didnt|never|stopped',
    'wake up|waking up|waking|woken|wake her|wake him|wake them|come to|get up|respond|responding|moving|opening (?:his|her|their) eyes',
    3,
  ),
  new RegExp(
    ` ${WHO} (?:[a-z]+ ){0,2}(?:is down|down|went down|goes down)(?: hard| bad| now| help| on the (?:field|court|floor|ground|track|turf|deck))+ `,
  ),
  / (?:doesnt|dont|didnt|not|cant|cannot|wont|not) (?:even )?(?:know|remember|tell|telling|sure) (?:me |us )?(?:where|who|what day|his name|her name) (?:[a-z]+ )?(?:he|she|they|i|it) (?:is|are|am|was) (?:right now |anymore )?(?:$|after|and|at|from|since|hot|help|so)/,
  / (?:doesnt|dont|cant|didnt) (?:know|remember) (?:his|her|their|my) (?:own )?name /,
  near(
    'hit|hits|head|concuss\\w*',
    'vomit\\w*|throwing up|threw up|puk\\w*|confus\\w*|wont wake|blood|bleeding|slurr\\w*|unequal pupils|one pupil',
    8,
  ),
  / (?:low|crash\w*|dropp\w*) (?:blood )?sugar (?:[a-z]+ ){0,8}(?:wont|not|cant|passed|unconscious|confused|seiz\w*) | diabetic (?:[a-z]+ ){0,6}(?:passed|confused|unconscious|wont|shaking|collaps\w*|not making) /,
  / (?:delirious|incoherent|disoriented|delirium) /,
];
