import { near } from '../near.ts';
import { WHO } from '../words.ts';

export const BLEEDING: readonly RegExp[] = [
  / (?:blood|bleeding) (?:[a-z]+ ){0,2}(?:wont|doesnt|not|cant|isnt) (?:[a-z]+ )?(?:stop\w*|clot\w*) /,
  / bleed\w* (?:[a-z]+ ){0,4}(?:bad\w*|lot|heavily|out|everywhere|wont stop|not stopping|stop|a ton|nonstop|profusely|hard|deep)| (?:lots of|so much|losing|coughing up|vomiting|throwing up|puking) blood | blood everywhere | (?:wont|doesnt|cant) stop (?:the )?bleed\w*/,
  / (?:cut|sliced|chopped|severed) (?:[a-z]+ ){0,4}(?:off|bone|artery|deep|wrist|badly|bleed\w*) (?!cut into)/,
  near(
    'bleed\\w*|blood(?! sugars?| work| tests?| panel| type| pressure| draw| orange| thinner| thinners)',
    'bad\\w*|lots?|heavily|heavy|everywhere|wont stop|not stopping|doesnt stop|cant stop|a ton|nonstop|profusely|gush\\w*|pour\\w*|spurt\\w*|deep|losing|lost|so much|pool|dripping|soak\\w*|out|help|coughing|stop',
    4,
  ),
  near('mouth|head|eyes?|ears?|face|neck|throat|wrists?|stomach|belly', 'bleed\\w*', 3),
  new RegExp(` ${WHO} (?:is |are |was |started |keeps |wont stop |been |just |still )*bleeding `),
  near(
    'cut|sliced?|slicing|chopped|stabbed?|gash\\w*|lacerat\\w*|severed|amputat\\w*',
    '(?:finger|fingers|hand|thumb|wrist|arm|palm|leg|face|fingertip)(?: [a-z]+){0,4} (?:bad|badly|deep|off|bone|blood|bleeding|open|gushing|pouring|wont|stitches|really|hard|severe\\w*|everywhere)',
    4,
  ),
  / (?:deep|bad|severe|huge|nasty|gaping) (?:cut|gash|laceration|wound) | (?:cut|sliced|chopped) (?:off )?(?:the )?(?:tip|part|piece) of (?:my|his|her|their) | gash(?:ed)? | stab(?:bed| wound) (?!the|it|with a (?:fork|toothpick))/,
];
