import { both } from '../near.ts';

export const HEAT_ILLNESS: readonly RegExp[] = [
  / (?:temp|temperature|fever) (?:[a-z]+ ){0,3}10[4-9] .*(?:confus\w*|vomit\w*|collaps\w*|hot|not|seiz\w*|athlete|he|she) /,
  / (?:he|she|hes|shes|athlete|player|kid|and|runner|girl|guy) (?:is |now |all |so |really |very |seems |acting |got )*(?:confused|delirious|disoriented|incoherent) (?!about|by|on|which|with|how|what|why|where|when)/,
  / (?:not|stopped|isnt|arent|no longer) making (?:any )?sense .*(?:heat|hot|sun|practice|overheat\w*)?/,
  / overheat\w* (?!oven|motor|mixer|fridge)(?:[a-z]+ ){0,6}(?:sense|confus\w*|vomit\w*|dizzy|down|athlete|player|stopped|help) /,
  / (?:heat ?stroke|heatstroke|sun ?stroke|heat exhaustion|heat illness|heat sick\w*|overheat(?:ed|ing) (?:player|athlete|on the field|bad)) /,
  / (?:stopped|not|quit|no longer) sweating /,
  / (?:confused|delirious|disoriented|vomiting|staggering|stumbling|dizzy) (?:[a-z0-9]+ ){0,6}(?:heat|hot|sun|degrees|field) | (?:heat|hot|sun|degrees|overheat\w*) (?:[a-z0-9]+ ){0,6}(?:confused|delirious|disoriented|staggering|stumbling|collapsing) /,
  both(
    'overheat\\w*|heat|in the sun|(?:is|was|so|very|really|super|too|boiling|burning|feels|skin|im|hes|shes|extremely|hot) hot|hot (?:and|outside|out|day|skin|practice|field|to the touch)|10[0-9]|9[5-9] (?:degrees|outside|out|f)',
    'delirious|disoriented|incoherent|doesnt know where|dont know where|not making sense|isnt making sense|makes no sense|talking nonsense|staggering|stumbling|wobbly|slurr\\w*|babbling|out of it|acting (?:weird|strange|drunk|funny|off|crazy|confused)|vomit\\w*|throwing up|threw up|puk\\w*|stopped sweating|not sweating|confused|confusion|collaps\\w*|faint\\w*|dry skin|loopy|goosebumps|chills',
  ),
  / (?:core|body|rectal) temp\w* (?:[a-z]+ ){0,4}10[3-9] /,
  / (?:stopped|no longer|quit|isnt|not|wont) (?:even )?sweat(?:ing)? /,
];
